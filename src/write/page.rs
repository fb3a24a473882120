//! What a page asks of the program that it holds, and the page itself. The shapes stand in `src/page/door.ts`.

pub mod ground;
pub mod panel;
pub mod trip;
