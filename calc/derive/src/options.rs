//! One of several, as an enum.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::{Data, DeriveInput, Error, Fields, Result};

use crate::inputs::{key_of, snake, words};

pub fn choice(item: &DeriveInput) -> Result<TokenStream> {
    let Data::Enum(data) = &item.data else {
        return Err(Error::new_spanned(item, "a choice is an enum"));
    };
    let (of, words) = (&item.ident, words(&item.attrs)?);
    let (mut keys, mut variants, mut names) = (Vec::new(), Vec::new(), Vec::new());
    let base = snake(&of.to_string()).to_ascii_uppercase();
    for variant in &data.variants {
        if !matches!(variant.fields, Fields::Unit) {
            return Err(Error::new_spanned(variant, "a choice has no fields"));
        }
        let key = key_of(variant)?;
        let name =
            format_ident!("{base}_{}", snake(&variant.ident.to_string()).to_ascii_uppercase());
        names.push(quote!(crate::words::#words::#name));
        variants.push(&variant.ident);
        keys.push(key);
    }
    let first =
        variants.first().ok_or_else(|| Error::new_spanned(item, "there is nothing to choose"))?;
    Ok(quote! {
        impl #of {
            /// Keys in the project file, and names.
            pub const OPTIONS: &'static [(&'static str, crate::words::Id)] = &[#((#keys, #names)),*];

            /// The one with this key; the first where there is none.
            pub fn of_key(key: &str) -> Self {
                match key {
                    #(#keys => Self::#variants,)*
                    _ => Self::#first,
                }
            }
        }
    })
}
