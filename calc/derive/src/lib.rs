//! What a sheet asks and what it comes to, from its structs alone.
//!
//! `#[derive(Inputs)]` on a struct makes its asks and reads it. Of each field,
//!
//! - the key in the project file is its name,
//! - the label and the help are the message of that name in the sheet's `.ftl`, and its attribute `help`,
//! - the kind is its type, with what `#[ask(…)]` adds; an `Option` may be left out.
//!
//! | field | `#[ask(…)]` |
//! |---|---|
//! | `Length`, `Mass`, …, or `f64` with `dimension(&X)` | `units("in", "mm")`, `range(0.0, 1.0)` in SI |
//! | `f64` | `range(0.0, 1.0)`, and `percent` or `unit("W")` |
//! | `u32` | `range(1, 20)` |
//! | `bool` | `usually(true)` |
//! | `String` | nothing; `required()` |
//! | text in a notation that hangs on what else is known | `read_by(&SUGGESTIONS, reads)`: what reads it gives the value or a message; the type has a default, which stands in where it is wrong |
//! | an enum that derives `Choice` | `choice` |
//! | what is written in a notation of its own (`Notation`) | `notation("16 ga", "1.2 mm")`: what is suggested |
//! | a struct that derives `Inputs` | `group` |
//! | `Vec` of such a struct | `rows(1)`: the fewest; a row is called by the attribute `row` |
//! | `Vec` of quantities, numbers or counts | `list(1)`: the fewest; a value is called by the attribute `each` |
//! | `Vec<f64>` of numbers where one may stand alone | `list(1)`, `alone` |
//! | `Vec` of what is written in a notation | `list(1)`, `read_by(&SUGGESTIONS, reads)` |
//! | an enum that derives `Either`, in an `Option` where none may be given | `either` |
//! | what another sheet hands over (`HandOff`), as one of several in a `Taken` | `sheet_of("water")`: the kinds that give it; `required()` where it cannot be left out |
//! | another sheet that is taken from after reading (`NamedSheet`) | `sheet_of("solar")`, `later` |
//!
//! What else stands there is a method of `Ask` and its arguments: `usual("3/4 in", "20 mm")`,
//! `from_body(BodyPart::Ribs)`; `or_handed` on an `Option` of a value that must be typed unless another sheet hands it
//! over, which is told after reading; `no_help` where the label says it all; `word(window_label)` where the message is not the
//! one of the field's name, `word(wiring::far_source)` where it stands in another file. The help of a list is of each of its values, with `help_of_all` of all of them.
//!
//! `#[derive(Outcome)]` on a struct of results makes its outcome: each field under its name and its unit.

mod inputs;
mod options;
mod outcome;

use proc_macro::TokenStream;
use syn::{DeriveInput, parse_macro_input};

/// Asks for the fields of a struct, and reads them. `#[words(stud_marks)]` names the file of the messages.
#[proc_macro_derive(Inputs, attributes(ask, words))]
pub fn inputs(item: TokenStream) -> TokenStream {
    let item = parse_macro_input!(item as DeriveInput);
    inputs::inputs(&item).unwrap_or_else(syn::Error::into_compile_error).into()
}

/// Asks for one of several inputs, each a variant with one field; the first stands where none is given. Its key is its
/// name in snake case, or what `#[key("…")]` says.
#[proc_macro_derive(Either, attributes(ask, key, words))]
pub fn either(item: TokenStream) -> TokenStream {
    let item = parse_macro_input!(item as DeriveInput);
    inputs::either(&item).unwrap_or_else(syn::Error::into_compile_error).into()
}

/// One of several, each a variant without fields: its key is its name in snake case, or what `#[key("…")]` says.
#[proc_macro_derive(Choice, attributes(key, words))]
pub fn choice(item: TokenStream) -> TokenStream {
    let item = parse_macro_input!(item as DeriveInput);
    options::choice(&item).unwrap_or_else(syn::Error::into_compile_error).into()
}

/// The outcome of a struct of results. `#[outcome(skip)]` leaves a field out, `#[outcome(name = "…")]` names it,
/// `#[outcome(flat)]` puts the fields of another struct of results in its place.
#[proc_macro_derive(Outcome, attributes(outcome))]
pub fn outcome(item: TokenStream) -> TokenStream {
    let item = parse_macro_input!(item as DeriveInput);
    outcome::outcome(&item).unwrap_or_else(syn::Error::into_compile_error).into()
}
