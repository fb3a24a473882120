//! Weaves every change that cargo-mutants lists into the sources at once, each behind a switch, so that the program is built once
//! and not two thousand times: `a + b` becomes `(if crate::switch::on(7) {a - b} else {a + b})`.
//!
//! `weave LIST LEFT_OUT TREE`: the list as `cargo mutants --list --json` prints it; a file with the numbers of changes that are not
//! to be woven, one a line; and the checkout whose files are rewritten. Prints, as JSON, where each change now stands.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::{env, fs, process};

use proc_macro2::LineColumn;
use serde_json::{Value, json};
use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{Arm, BinOp, Block, Expr, ExprBinary, ExprStruct, ExprUnary, ImplItemFn, ItemFn, Member, ReturnType, TraitItemFn, Type};

/// A change, by its place in the list.
struct Change {
    number: usize,
    replacement: String,
}

/// Where a kind of change begins: its name, the line and the column, as cargo-mutants counts them.
type Place = (&'static str, usize, usize);

const KINDS: [&str; 6] = ["BinaryOperator", "FnValue", "UnaryOperator", "MatchArm", "MatchArmGuard", "StructField"];

/// A file and what is to be put into it.
struct Weaver<'a> {
    text: &'a str,
    changes: HashMap<Place, Vec<Change>>,
    /// At a byte: what ends there, then what begins there.
    inserts: BTreeMap<usize, (String, String)>,
    woven: HashSet<usize>,
}

fn place(kind: &'static str, at: LineColumn) -> Place {
    (kind, at.line, at.column + 1)
}

/// Marks around a change, to be found again in the rewritten text.
fn marked(number: usize, text: &str) -> String {
    format!("/*<{number}*/{text}/*{number}>*/")
}

/// A condition that is met while the change is on.
fn on(number: usize) -> String {
    marked(number, &format!("crate::switch::on({number})"))
}

fn has_let(expr: &Expr) -> bool {
    match expr {
        Expr::Let(_) => true,
        Expr::Binary(both) => has_let(&both.left) || has_let(&both.right),
        _ => false,
    }
}

impl Weaver<'_> {
    fn take(&mut self, place: Place) -> Vec<Change> {
        let taken = self.changes.remove(&place).unwrap_or_default();
        self.woven.extend(taken.iter().map(|change| change.number));
        taken
    }

    fn open(&mut self, at: usize, text: &str) {
        self.inserts.entry(at).or_default().1.push_str(text);
    }

    fn close(&mut self, at: usize, text: &str) {
        self.inserts.entry(at).or_default().0.push_str(text);
    }

    fn raw(&self, node: &impl Spanned) -> &str {
        &self.text[node.span().byte_range()]
    }

    /// `(if on(1) {…} else if on(2) {…} else {what stood there})`; the caller closes with `})`.
    fn open_choice(&mut self, at: usize, choices: &[(usize, String)]) {
        self.open(at, "(");
        for (number, text) in choices {
            let choice = marked(*number, &format!("if crate::switch::on({number}) {{{text}}} else "));
            self.open(at, &choice);
        }
        self.open(at, "{");
    }

    /// What the operators of an expression without brackets are changed to, each in the whole of it: it is read anew then, as it is
    /// when only the letters are changed.
    fn chain(&mut self, root: &ExprBinary) {
        let mut operators = Vec::new();
        let mut operands = Vec::new();
        unfold(root, &mut operators, &mut operands);
        let whole = root.span().byte_range();
        let mut choices = Vec::new();
        for operator in operators {
            let span = operator.span();
            for change in self.take(place("BinaryOperator", span.start())) {
                let (before, after) = (&self.text[whole.start..span.byte_range().start], &self.text[span.byte_range().end..whole.end]);
                choices.push((change.number, format!("{before}{}{after}", change.replacement)));
            }
        }
        if !choices.is_empty() {
            self.open_choice(whole.start, &choices);
        }
        for operand in operands {
            self.visit_expr(operand);
        }
        if !choices.is_empty() {
            self.close(whole.end, "})");
        }
    }

    /// Early returns of what the function is to answer; where it answers with some iterator or other, both are one of two.
    fn function(&mut self, block: &Block, returns: &ReturnType) {
        let (Some(first), Some(last)) = (block.stmts.first(), block.stmts.last()) else { return };
        let changes = self.take(place("FnValue", first.span().start()));
        if changes.is_empty() {
            return;
        }
        let is_some_iterator = matches!(returns, ReturnType::Type(_, kind) if matches!(**kind, Type::ImplTrait(_)));
        for Change { number, replacement } in changes {
            let answer = if is_some_iterator {
                format!("crate::switch::Either::Changed(Box::new({replacement}) as Box<dyn Iterator<Item = _>>)")
            } else {
                replacement
            };
            let early = marked(number, &format!("if crate::switch::on({number}) {{return {answer};}}"));
            self.open(block.brace_token.span.open().byte_range().end, &early);
        }
        if is_some_iterator {
            self.open(last.span().byte_range().start, "crate::switch::Either::Same(");
            self.close(last.span().byte_range().end, ")");
        }
    }
}

fn unfold<'e>(both: &'e ExprBinary, operators: &mut Vec<&'e BinOp>, operands: &mut Vec<&'e Expr>) {
    for (side, is_left) in [(&both.left, true), (&both.right, false)] {
        match &**side {
            Expr::Binary(inner) => unfold(inner, operators, operands),
            leaf => operands.push(leaf),
        }
        if is_left {
            operators.push(&both.op);
        }
    }
}

impl<'ast> Visit<'ast> for Weaver<'_> {
    fn visit_expr_binary(&mut self, both: &'ast ExprBinary) {
        if has_let(&both.left) || has_let(&both.right) {
            visit::visit_expr_binary(self, both);
        } else {
            self.chain(both);
        }
    }

    fn visit_expr_unary(&mut self, unary: &'ast ExprUnary) {
        let whole = unary.span().byte_range();
        let operand = self.raw(&unary.expr).to_owned();
        let changes = self.take(place("UnaryOperator", unary.op.span().start()));
        let choices: Vec<_> = changes.iter().map(|change| (change.number, operand.clone())).collect();
        if !choices.is_empty() {
            self.open_choice(whole.start, &choices);
        }
        visit::visit_expr_unary(self, unary);
        if !choices.is_empty() {
            self.close(whole.end, "})");
        }
    }

    fn visit_arm(&mut self, arm: &'ast Arm) {
        let left_out = self.take(place("MatchArm", arm.span().start()));
        let Some((_, guard)) = &arm.guard else {
            self.visit_pat(&arm.pat);
            for change in left_out {
                self.close(arm.pat.span().byte_range().end, &format!(" if !{}", on(change.number)));
            }
            self.visit_expr(&arm.body);
            return;
        };
        let span = guard.span();
        let mut begin = String::from("(");
        for change in left_out {
            begin += &format!("!{} && ", on(change.number));
        }
        begin += "(";
        for change in self.take(place("MatchArmGuard", span.start())) {
            begin += &if change.replacement == "true" {
                format!("{} || ", on(change.number))
            } else {
                format!("!{} && ", on(change.number))
            };
        }
        begin += "(";
        self.open(span.byte_range().start, &begin);
        self.visit_expr(guard);
        self.close(span.byte_range().end, ")))");
        self.visit_expr(&arm.body);
    }

    fn visit_expr_struct(&mut self, made: &'ast ExprStruct) {
        if let Some(rest) = &made.rest {
            let rest = self.raw(rest).to_owned();
            for field in &made.fields {
                let Member::Named(name) = &field.member else { continue };
                for change in self.take(place("StructField", field.span().start())) {
                    let whole = field.expr.span().byte_range();
                    // A field in short is no expression that could be wrapped.
                    if field.colon_token.is_some() {
                        self.open_choice(whole.start, &[(change.number, format!("({rest}).{name}"))]);
                        self.close(whole.end, "})");
                    } else {
                        let short = marked(change.number, &format!("{name}: if crate::switch::on({}) {{({rest}).{name}}} else {{", change.number));
                        self.open(whole.start, &short);
                        self.close(whole.end, "}");
                    }
                }
            }
        }
        visit::visit_expr_struct(self, made);
    }

    fn visit_item_fn(&mut self, item: &'ast ItemFn) {
        self.function(&item.block, &item.sig.output);
        visit::visit_item_fn(self, item);
    }

    fn visit_impl_item_fn(&mut self, item: &'ast ImplItemFn) {
        self.function(&item.block, &item.sig.output);
        visit::visit_impl_item_fn(self, item);
    }

    fn visit_trait_item_fn(&mut self, item: &'ast TraitItemFn) {
        if let Some(block) = &item.default {
            self.function(block, &item.sig.output);
        }
        visit::visit_trait_item_fn(self, item);
    }
}

/// The text with its inserts, and where each change stands in it, in bytes.
fn rewritten(weaver: &Weaver<'_>) -> (String, Vec<(usize, usize, usize)>) {
    let mut text = String::new();
    let mut done = 0;
    for (&at, (closing, opening)) in &weaver.inserts {
        text.push_str(&weaver.text[done..at]);
        text.push_str(closing);
        text.push_str(opening);
        done = at;
    }
    text.push_str(&weaver.text[done..]);
    let mut stands = Vec::new();
    for &number in &weaver.woven {
        let begin = format!("/*<{number}*/");
        let end = format!("/*{number}>*/");
        if let (Some(from), Some(to)) = (text.find(&begin), text.find(&end)) {
            stands.push((number, from, to + end.len()));
        }
    }
    (text, stands)
}

fn read(path: &str) -> String {
    fs::read_to_string(path).unwrap_or_else(|why| {
        eprintln!("{path}: {why}");
        process::exit(1);
    })
}

fn number_of(value: &Value) -> usize {
    value.as_u64().and_then(|n| usize::try_from(n).ok()).unwrap_or_default()
}

fn main() {
    let given: Vec<String> = env::args().skip(1).collect();
    let [list, left_out, tree] = given.as_slice() else {
        eprintln!("weave LIST LEFT_OUT TREE");
        process::exit(2);
    };
    let left_out: HashSet<usize> = read(left_out).lines().filter_map(|line| line.parse().ok()).collect();
    let list: Vec<Value> = serde_json::from_str(&read(list)).unwrap_or_default();
    let mut files: BTreeMap<&str, HashMap<Place, Vec<Change>>> = BTreeMap::new();
    for (number, listed) in list.iter().enumerate().filter(|(number, _)| !left_out.contains(number)) {
        let text = |key: &str| listed[key].as_str().unwrap_or_default();
        let Some(kind) = KINDS.into_iter().find(|kind| *kind == text("genre")) else { continue };
        let start = &listed["span"]["start"];
        let at = (kind, number_of(&start["line"]), number_of(&start["column"]));
        let replacement = text("replacement").to_owned();
        files.entry(text("file")).or_default().entry(at).or_default().push(Change { number, replacement });
    }
    let mut stands = Vec::new();
    for (name, changes) in files {
        let path = format!("{tree}/{name}");
        let text = read(&path);
        let parsed = syn::parse_file(&text).unwrap_or_else(|why| panic!("{path}: {why}"));
        let mut weaver = Weaver { text: &text, changes, inserts: BTreeMap::new(), woven: HashSet::new() };
        weaver.visit_file(&parsed);
        let (new, places) = rewritten(&weaver);
        stands.extend(places.into_iter().map(|(number, from, to)| json!({"number": number, "file": name, "from": from, "to": to})));
        fs::write(&path, new).unwrap_or_else(|why| panic!("{path}: {why}"));
    }
    println!("{}", Value::Array(stands));
}
