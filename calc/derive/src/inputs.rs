//! The asks of a struct, and how it is read.

use proc_macro2::{Span, TokenStream};
use quote::{format_ident, quote};
use syn::ext::IdentExt as _;
use syn::parse::Parser as _;
use syn::punctuated::Punctuated;
use syn::{
    Attribute, Data, DeriveInput, Error, Expr, ExprCall, Fields, GenericArgument, Ident, LitStr,
    Path, PathArguments, Result, Token, Type, Variant,
};

/// What a field asks, and how it is read.
struct Field {
    /// The constant that holds the ask.
    name: Ident,
    /// Its value.
    ask: TokenStream,
    /// What reads it.
    read: TokenStream,
}

pub fn inputs(item: &DeriveInput) -> Result<TokenStream> {
    let Data::Struct(data) = &item.data else {
        return Err(Error::new_spanned(
            item,
            "inputs are a struct; of an enum, derive Either or Choice",
        ));
    };
    let Fields::Named(fields) = &data.fields else {
        return Err(Error::new_spanned(item, "inputs are fields with names"));
    };
    let words = words(&item.attrs)?;
    let (mut idents, mut asked) = (Vec::new(), Vec::new());
    for field in &fields.named {
        let Some(ident) = &field.ident else { continue };
        asked.push(Field::new(&ident.unraw().to_string(), &field.ty, &field.attrs, &words)?);
        idents.push(ident);
    }
    let of = &item.ident;
    let constants = constants(&asked);
    let reads = asked.iter().map(|field| &field.read);
    Ok(quote! {
        impl #of {
            #constants

            /// Reads them, with a fault for all that is wrong.
            pub fn read(reader: &crate::reader::Reader<'_>) -> Self {
                Self { #(#idents: #reads),* }
            }
        }
    })
}

pub fn either(item: &DeriveInput) -> Result<TokenStream> {
    let Data::Enum(data) = &item.data else {
        return Err(Error::new_spanned(item, "one of several inputs is an enum"));
    };
    let words = words(&item.attrs)?;
    let (mut asked, mut arms) = (Vec::new(), Vec::new());
    for variant in &data.variants {
        let Fields::Unnamed(fields) = &variant.fields else {
            return Err(Error::new_spanned(
                variant,
                "one of several inputs has one field without a name",
            ));
        };
        let Some(field) = fields.unnamed.first() else {
            return Err(Error::new_spanned(variant, "one of several inputs has one field"));
        };
        let key = key_of(variant)?;
        let field = Field::new(&key, &field.ty, &variant.attrs, &words)?;
        let (ident, read, number) = (&variant.ident, &field.read, arms.len());
        arms.push(match number {
            // What is wrong with the first where one must be given and none is was told already.
            0 => quote! {
                None if ask.need == crate::ask::Need::Required => {
                    reader.unheard(|reader| Self::#ident(#read))
                }
                _ => Self::#ident(#read)
            },
            _ => quote!(Some(#number) => Self::#ident(#read)),
        });
        asked.push(field);
    }
    arms.rotate_left(1);
    let (of, constants) = (&item.ident, constants(&asked));
    Ok(quote! {
        impl #of {
            #constants

            /// Reads the one that is given; the first where none or more than one is.
            pub fn read(reader: &crate::reader::Reader<'_>, ask: &crate::ask::Ask) -> Self {
                match reader.which(ask) { #(#arms,)* }
            }
        }
    })
}

fn constants(asked: &[Field]) -> TokenStream {
    let names: Vec<_> = asked.iter().map(|field| &field.name).collect();
    let asks = asked.iter().map(|field| &field.ask);
    quote! {
        #(
            #[doc = "What is asked for the field of this name."]
            pub const #names: &'static crate::ask::Ask = &const { #asks };
        )*
        /// All that is asked, in the order of the page.
        pub const ASKS: &'static [&'static crate::ask::Ask] = &[#(Self::#names),*];
    }
}

/// The file of the messages.
pub fn words(attributes: &[Attribute]) -> Result<Path> {
    let named = attributes.iter().find(|one| one.path().is_ident("words"));
    named
        .ok_or_else(|| Error::new(Span::call_site(), "#[words(…)] names the file of the messages"))?
        .parse_args()
}

/// `TwoWords` as `two_words`.
pub fn snake(name: &str) -> String {
    let mut snake = String::new();
    for letter in name.chars() {
        if letter.is_ascii_uppercase() && !snake.is_empty() {
            snake.push('_');
        }
        snake.push(letter.to_ascii_lowercase());
    }
    snake
}

/// A variant's name in snake case, or what `#[key("…")]` says.
pub fn key_of(variant: &Variant) -> Result<String> {
    match variant.attrs.iter().find(|one| one.path().is_ident("key")) {
        Some(attribute) => Ok(attribute.parse_args::<LitStr>()?.value()),
        None => Ok(snake(&variant.ident.to_string())),
    }
}

/// What `#[ask(…)]` says.
#[derive(Default)]
struct Said {
    calls: Vec<(String, ExprCall)>,
    marks: Vec<String>,
}

impl Said {
    fn read(attributes: &[Attribute]) -> Result<Self> {
        let mut said = Self::default();
        for attribute in attributes.iter().filter(|one| one.path().is_ident("ask")) {
            let tokens = attribute.meta.require_list()?.tokens.clone();
            for one in Punctuated::<Expr, Token![,]>::parse_terminated.parse2(tokens)? {
                match one {
                    Expr::Call(call) => {
                        let Expr::Path(path) = call.func.as_ref() else {
                            return Err(Error::new_spanned(call, "a name and its arguments"));
                        };
                        said.calls.push((path.path.require_ident()?.to_string(), call));
                    }
                    Expr::Path(path) => said.marks.push(path.path.require_ident()?.to_string()),
                    other => {
                        return Err(Error::new_spanned(
                            other,
                            "a name, or a name and its arguments",
                        ));
                    }
                }
            }
        }
        Ok(said)
    }

    /// Takes the arguments of a call out.
    fn take(&mut self, name: &str) -> Option<Vec<Expr>> {
        let at = self.calls.iter().position(|(known, _)| known == name)?;
        Some(self.calls.remove(at).1.args.into_iter().collect())
    }

    /// Whether there is a call of this name.
    fn has(&self, name: &str) -> bool {
        self.calls.iter().any(|(known, _)| known == name)
    }

    /// Takes a bare word out.
    fn marked(&mut self, name: &str) -> bool {
        let at = self.marks.iter().position(|known| known == name);
        at.map(|at| self.marks.remove(at)).is_some()
    }

    /// What is left: methods of `Ask`.
    fn methods(self) -> Result<TokenStream> {
        if let Some(mark) = self.marks.first() {
            return Err(Error::new(Span::call_site(), format!("`{mark}` is not known here")));
        }
        let calls = self.calls.iter().map(|(_, call)| call);
        Ok(quote!(#(.#calls)*))
    }
}

impl Field {
    fn new(key: &str, of: &Type, attributes: &[Attribute], words: &Path) -> Result<Self> {
        let mut said = Said::read(attributes)?;
        let name = Ident::new(&key.to_ascii_uppercase(), Span::call_site());
        let (mut words, mut message) = (words.clone(), key.to_ascii_uppercase());
        if let Some(word) = said.take("word") {
            let [Expr::Path(named)] = word.as_slice() else {
                return Err(Error::new_spanned(of, "word(the_name_of_the_message)"));
            };
            // The message of another file stands behind that file's name.
            let names: Vec<&Ident> = named.path.segments.iter().map(|one| &one.ident).collect();
            match *names.as_slice() {
                [name] => message = name.to_string().to_ascii_uppercase(),
                [file, name] => {
                    words = file.clone().into();
                    message = name.to_string().to_ascii_uppercase();
                }
                _ => return Err(Error::new_spanned(named, "word(file::the_name_of_the_message)")),
            }
        }
        let word = |ending: &str| {
            let name = format_ident!("{message}{ending}");
            quote!(crate::words::Phrase::Id(crate::words::#words::#name))
        };
        let (inner, optional) = match inside(of, "Option") {
            Some(inner) => (inner, true),
            None => (of, false),
        };
        let mut helps = !said.marked("no_help");
        let handed = said.marked("or_handed");
        if handed && !optional {
            return Err(Error::new_spanned(of, "what may be handed over stands in an Option"));
        }
        let maybe = |always: &str, maybe: &str| {
            Ident::new(if optional { maybe } else { always }, Span::call_site())
        };
        let (ask, read);
        if said.marked("either") {
            helps = false;
            ask = quote!(crate::ask::Ask::either("", #inner::ASKS));
            read = if optional {
                quote!(reader.given(Self::#name).then(|| #inner::read(reader, Self::#name)))
            } else {
                quote!(#inner::read(reader, Self::#name))
            };
        } else if said.marked("group") {
            let call = maybe("group", "maybe_group");
            ask = quote!(crate::ask::Ask::group(#key, "", #inner::ASKS));
            read = quote!(reader.#call(Self::#name, #inner::read));
        } else if let Some(kinds) = said.take("sheet_of") {
            let kinds = kinds.first();
            ask = quote!(crate::ask::Ask::sheet_of(#key, "", #kinds));
            read = if said.marked("later") {
                quote!(reader.named_sheet(Self::#name))
            } else if optional || inside(of, "Taken").is_some() {
                quote!(reader.sheet(Self::#name))
            } else {
                quote!(reader.of_sheet(Self::#name))
            };
        } else if let Some(suggestions) = said.take("notation") {
            let call = maybe("notated", "maybe_notated");
            ask = quote!(crate::ask::Ask::notation(#key, "", "", &[#(#suggestions),*]));
            read = quote!(reader.#call(Self::#name));
        } else if said.marked("choice") {
            ask = quote!(crate::ask::Ask::one_of(#key, #inner::OPTIONS));
            read = quote!(#inner::of_key(reader.choice(Self::#name)));
        } else if let Some(at_least) = said.take("rows") {
            let (of, row) = (element(inner)?, word("_ROW"));
            ask = quote!(crate::ask::Ask::rows(#key, "", "", #(#at_least),*, #of::ASKS).row(#row));
            read = quote!(reader.rows(Self::#name, #of::read));
        } else if said.has("list") && said.has("read_by") {
            let (at_least, reads) = (said.take("list"), said.take("read_by").unwrap_or_default());
            let [suggestions, reads] = reads.as_slice() else {
                return Err(Error::new_spanned(inner, "read_by(&SUGGESTIONS, what_reads_it)"));
            };
            let (at_least, label) = (at_least.unwrap_or_default(), word("_EACH"));
            let of_list = quote!(#(#at_least),*);
            ask = quote!(crate::ask::Ask::list(#key, "", #of_list, &const {
                crate::ask::Ask::notation("", "", "", #suggestions).named(#label)
            }));
            read = quote!(reader.each_read_by(Self::#name, #reads));
        } else if let Some(at_least) = said.take("list") {
            let (of, label) = (element(inner)?, word("_EACH"));
            let (constructor, single) = number("", of, &mut said, false)?;
            let of_all = said.marked("help_of_all");
            let help = if helps && !of_all {
                let help = word("_HELP");
                quote!(.told(#help))
            } else {
                quote!()
            };
            helps = helps && of_all;
            // What is usual is usual of each value; where the values come from is of all of them.
            let usual = said.take("usual").map(|usual| quote!(.usual(#(#usual),*)));
            let of_list = quote!(#(#at_least),*);
            let ribs = said.calls.iter().any(|(name, _)| name == "from_body");
            let call = match (said.marked("alone"), ribs, single == "measure") {
                (true, ..) => "one_or_more_numbers",
                (_, true, _) => "positions",
                (.., true) => "measures",
                _ if single == "count" => "counts",
                _ => "numbers",
            };
            let call = Ident::new(call, Span::call_site());
            ask = quote!(crate::ask::Ask::list(#key, "", #of_list, &const { #constructor #usual.named(#label)#help }));
            read = quote!(reader.#call(Self::#name));
        } else if let Some(of) = said.take("read_by") {
            let [suggestions, reads] = of.as_slice() else {
                return Err(Error::new_spanned(inner, "read_by(&SUGGESTIONS, what_reads_it)"));
            };
            let call = maybe("read_by", "maybe_read_by");
            ask = quote!(crate::ask::Ask::notation(#key, "", "", #suggestions));
            read = quote!(reader.#call(Self::#name, #reads));
        } else {
            let (constructor, call) = number(key, inner, &mut said, optional && !handed)?;
            ask = constructor;
            read = if handed {
                quote!(reader.given(Self::#name).then(|| reader.#call(Self::#name)))
            } else {
                quote!(reader.#call(Self::#name))
            };
        }
        let label = word("");
        let help = if helps {
            let help = word("_HELP");
            quote!(.told(#help))
        } else {
            quote!()
        };
        let optional = if optional && !handed { quote!(.optional()) } else { quote!() };
        let methods = said.methods()?;
        Ok(Self { name, ask: quote!(#ask.named(#label)#help #optional #methods), read })
    }
}

/// A single value: what asks for it, and the reader's method.
fn number(key: &str, of: &Type, said: &mut Said, optional: bool) -> Result<(TokenStream, Ident)> {
    let method = |always: &str, maybe: &str| {
        Ident::new(if optional { maybe } else { always }, Span::call_site())
    };
    if let Some(units) = said.take("units") {
        let range = range(of, said)?;
        let (dimension, method) = match said.take("dimension") {
            Some(dimension) => (quote!(#(#dimension),*), method("si", "maybe_si")),
            None => {
                (quote!(<#of as crate::reader::Measured>::DIMENSION), method("measure", "maybe"))
            }
        };
        return Ok((
            quote!(crate::ask::Ask::measure(#key, "", #dimension, [#(#units),*], (#range))),
            method,
        ));
    }
    let Type::Path(path) = of else {
        return Err(Error::new_spanned(of, "a type that can be asked for"));
    };
    match path.path.segments.last().map(|last| last.ident.to_string()).as_deref() {
        Some("f64") => {
            let range = range(of, said)?;
            let ask = if said.marked("percent") {
                quote!(percent(#key, "", (#range)))
            } else if let Some(unit) = said.take("unit") {
                quote!(number_in(#key, "", #(#unit),*, (#range)))
            } else {
                quote!(number(#key, "", (#range)))
            };
            Ok((quote!(crate::ask::Ask::#ask), method("number", "maybe_number")))
        }
        Some("u32") => {
            let range = range(of, said)?;
            Ok((quote!(crate::ask::Ask::count(#key, "", (#range))), method("count", "maybe_count")))
        }
        Some("bool") => {
            let usual = said.take("usually").unwrap_or_default();
            Ok((quote!(crate::ask::Ask::flag(#key, "", #(#usual),*)), method("flag", "flag")))
        }
        Some("String") => Ok((quote!(crate::ask::Ask::words(#key, "")), method("words", "words"))),
        _ => Err(Error::new_spanned(
            of,
            "say how it is asked for: units(…), choice, group, rows(…), list(…), either, sheet_of(…)",
        )),
    }
}

fn range(of: &Type, said: &mut Said) -> Result<TokenStream> {
    let range = said
        .take("range")
        .ok_or_else(|| Error::new_spanned(of, "range(least, most) is missing"))?;
    Ok(quote!(#(#range),*))
}

/// What a `Vec` holds.
fn element(of: &Type) -> Result<&Type> {
    inside(of, "Vec").ok_or_else(|| Error::new_spanned(of, "several values stand in a Vec"))
}

/// What stands in the angle brackets of a type of this name.
fn inside<'a>(of: &'a Type, name: &str) -> Option<&'a Type> {
    let Type::Path(path) = of else { return None };
    let last = path.path.segments.last().filter(|last| last.ident == name)?;
    let PathArguments::AngleBracketed(arguments) = &last.arguments else { return None };
    arguments.args.iter().find_map(|argument| match argument {
        GenericArgument::Type(inner) => Some(inner),
        _ => None,
    })
}
