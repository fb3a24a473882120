//! `schrund options`: ways to split the party and to use the ropes at hand, side by side.

use std::io::Write;

use schrund::{
    Planner,
    fault::{Fault, files::WrittenAs},
    plan::leg::Verdict,
    write::{self, Look},
};

use crate::{
    End,
    args::{OptionsArgs, OptionsFormat, voice},
    ending, inputs,
    save::Saver,
    show::Show,
};

pub(crate) fn run(args: &OptionsArgs, show: &Show) -> End {
    match weigh(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&inputs::named(problems, &args.job)),
    }
}

fn weigh(args: &OptionsArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let saver = Saver::sparing(&args.job, args.force);
    let refusals = saver.refusals(args.output.as_slice(), WrittenAs::Output);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let format = match ending::options(args) {
        Ok(format) => format,
        Err(answer) => return Ok(show.misused(&answer)),
    };
    let inputs = inputs::read(&args.job)?;
    let options = Planner::new(&inputs)?.options()?;
    show.notices(&inputs.notices);
    show.detail(&format!("{} ways weighed", options.weighed));
    let file = args.output.as_ref().filter(|path| path.as_os_str() != "-");
    let look = Look {
        width: file.map_or_else(|| show.width(), |_| Look::default().width),
        voice: voice(inputs.language, args.units),
        ..Look::default()
    };
    let write = |out: &mut dyn Write| match format {
        OptionsFormat::Table => out.write_all(write::options::table(&options, look).as_bytes()),
        OptionsFormat::Json => out.write_all(write::json::options(&options)?.as_bytes()),
    };
    let end = match file {
        Some(path) => {
            saver.save(path, write).map_err(|fault| vec![fault])?;
            show.wrote(path);
            End::Done
        }
        None => show.result(write),
    };
    Ok(match (end, options.verdict()) {
        (End::Done, Verdict::Outside | Verdict::Stop) => End::Outside,
        (end, _) => end,
    })
}
