//! What a sheet gives back, in the same places whatever its trade.

use calc::lists::{BuyLine, MarkStrip};
use calc::quantity::{Style, plain};
use calc::report::{Report, Step, Table, Weight};
use leptos::prelude::*;

use super::drawing::DrawingView;
use super::tape::TapeView;

/// The answers: large, one to three.
pub fn answers(report: &Report) -> AnyView {
    let figures = report
        .answers
        .iter()
        .map(|answer| {
            let note = (!answer.note.is_empty())
                .then(|| view! { <span class="note">{answer.note.clone()}</span> });
            view! {
                <div class="answer">
                    <dt>{answer.label.clone()}</dt>
                    <dd data-result=answer.label.clone()>{answer.text.clone()}{note}</dd>
                </div>
            }
        })
        .collect_view();
    let remarks = report
        .remarks
        .iter()
        .map(|remark| {
            let (class, word) = match remark.weight {
                Weight::Good => ("remark good", "✓ "),
                Weight::Note => ("remark", "• "),
                Weight::Warning => ("remark warning", "! "),
            };
            view! { <li class=class><span aria-hidden="true">{word}</span>{remark.text.clone()}</li> }
        })
        .collect_view();
    view! { <dl class="answers">{figures}</dl><ul class="remarks">{remarks}</ul> }.into_any()
}

/// All that follows the answers.
pub fn details(report: &Report, style: Style) -> AnyView {
    let drawings = report
        .drawings
        .iter()
        .map(|drawing| view! { <DrawingView drawing=drawing.clone() /> })
        .collect_view();
    let marks = report.marks.iter().map(|strip| mark_strip(strip, style)).collect_view();
    let tables = report.tables.iter().map(table).collect_view();
    let cautions = report
        .cautions
        .iter()
        .map(|caution| {
            view! { <li>{caution.text}<cite>{caution.source.to_string()}</cite></li> }
        })
        .collect_view();
    let working = report.working.iter().map(step).collect_view();
    let buy = (!report.buy.is_empty()).then(|| {
        let lines = report.buy.iter().map(|line| view! { <li>{buy_words(line)}</li> }).collect_view();
        view! { <section class="buy"><h2>"To buy"</h2><ul>{lines}</ul></section> }
    });
    let cut = (!report.cut.is_empty()).then(|| {
        let lines = report
            .cut
            .iter()
            .map(|line| {
                let pieces: Vec<String> = line
                    .pieces
                    .iter()
                    .map(|piece| format!("{} {}", piece.label, style.mark(piece.length).text))
                    .collect();
                view! { <li>{line.count}" × "{line.stock.clone()}": "{pieces.join(", ")}</li> }
            })
            .collect_view();
        view! { <section class="cut"><h2>"To cut"</h2><ul>{lines}</ul></section> }
    });
    view! {
        {drawings}
        {marks}
        {tables}
        <section class="cautions"><h2>"Take care"</h2><ul>{cautions}</ul></section>
        {buy}
        {cut}
        <details class="working">
            <summary>"How it is worked out"</summary>
            <ol>{working}</ol>
        </details>
    }
    .into_any()
}

/// A piece's marks: each as a number and as a piece of tape with the spot on it.
pub fn mark_strip(strip: &MarkStrip, style: Style) -> AnyView {
    let marks = strip
        .marks
        .iter()
        .map(|mark| {
            let marked = style.mark(mark.at);
            let note = (!mark.note.is_empty())
                .then(|| view! { <span class="note warning">{mark.note.clone()}</span> });
            let over = (!marked.left_over_text.is_empty())
                .then(|| view! { <span class="note">{format!("exact spot {}", marked.left_over_text)}</span> });
            view! {
                <li class="mark">
                    <span class="mark-label">{mark.label.clone()}</span>
                    <strong>{marked.text}</strong>
                    {over}
                    {note}
                    <TapeView at=mark.at style=style />
                </li>
            }
        })
        .collect_view();
    view! {
        <section class="marks">
            <h2>{format!("Marks on the {}", strip.label)}</h2>
            <p class="help">{format!(
                "All from the left end of {}, tape hooked once.",
                style.length(strip.length)
            )}</p>
            <ol>{marks}</ol>
        </section>
    }
    .into_any()
}

fn table(table: &Table) -> AnyView {
    let heads =
        table.heads.iter().map(|head| view! { <th scope="col">{head.clone()}</th> }).collect_view();
    let rows = table
        .rows
        .iter()
        .map(|row| {
            let cells = row
                .cells
                .iter()
                .enumerate()
                .map(|(index, cell)| {
                    let cell = cell.clone();
                    if index == 0 {
                        let chosen = row.chosen.then_some(" ✓");
                        view! { <th scope="row">{cell}{chosen}</th> }.into_any()
                    } else {
                        view! { <td>{cell}</td> }.into_any()
                    }
                })
                .collect_view();
            view! { <tr class:chosen=row.chosen>{cells}</tr> }
        })
        .collect_view();
    view! {
        <section class="table" role="region" tabindex="0" aria-label=table.title.clone()>
            <table>
                <caption>{table.title.clone()}</caption>
                <thead><tr>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </section>
    }
    .into_any()
}

fn step(step: &Step) -> AnyView {
    let numbers =
        (!step.numbers.is_empty()).then(|| view! { <span>"= "{step.numbers.clone()}</span> });
    view! {
        <li>
            <b>{step.name.clone()}</b>
            <span class="formula">{step.formula.clone()}</span>
            {numbers}
            <span>"= "<strong>{step.result.clone()}</strong></span>
            <cite>{step.source.to_string()}</cite>
        </li>
    }
    .into_any()
}

/// A line of a buy list in words: `2 × floor finish, 1 gal container`.
pub fn buy_words(line: &BuyLine) -> String {
    let quantity = plain(line.quantity, 1);
    let unit = if line.unit == "each" { " ×".to_owned() } else { format!(" {} of", line.unit) };
    if line.spec.is_empty() {
        format!("{quantity}{unit} {}", line.item)
    } else {
        format!("{quantity}{unit} {}, {}", line.item, line.spec)
    }
}
