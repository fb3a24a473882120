/* What the program needs of C to answer inside a page: two symbols that Debian's wasi-libc does not have, and a door
   through which a page asks one instance again and again. */

extern _Thread_local int errno;
int *__errno_location(void) { return &errno; }

/* No path is resolved inside a page. */
char *realpath(const char *path, char *resolved) {
  (void)path;
  (void)resolved;
  return 0;
}

/* Rust's C `main`, with the arguments read anew. */
int __main_void(void);
__attribute__((export_name("answer"))) int answer(void) { return __main_void(); }
