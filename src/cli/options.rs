//! `schrund options`: ways to split the party and to use the ropes at hand, side by side.

use schrund::{
    Planner,
    fault::Fault,
    plan::leg::Verdict,
    write::{self, Look},
};

use crate::{
    End,
    args::{OptionsArgs, OptionsFormat, voice},
    inputs,
    show::Show,
};

pub(crate) fn run(args: &OptionsArgs, show: &Show) -> End {
    match weigh(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&inputs::named(problems, &args.job)),
    }
}

fn weigh(args: &OptionsArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let inputs = inputs::read(&args.job)?;
    let options = Planner::new(&inputs)?.options()?;
    show.notices(&inputs.notices);
    show.detail(&format!("{} ways weighed", options.weighed));
    let look = Look {
        width: show.width(),
        voice: voice(inputs.language, args.units),
        ..Look::default()
    };
    let end = show.result(|out| match args.format {
        OptionsFormat::Table => out.write_all(write::options::table(&options, look).as_bytes()),
        OptionsFormat::Json => out.write_all(write::json::options(&options)?.as_bytes()),
    });
    Ok(match (end, options.verdict()) {
        (End::Done, Verdict::Outside | Verdict::Stop) => End::Outside,
        (end, _) => end,
    })
}
