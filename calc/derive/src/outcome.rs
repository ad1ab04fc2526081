//! The outcome of a struct of results.

use proc_macro2::TokenStream;
use quote::quote;
use syn::{Data, DeriveInput, Error, Fields, LitStr, Result};

pub fn outcome(item: &DeriveInput) -> Result<TokenStream> {
    let Data::Struct(data) = &item.data else {
        return Err(Error::new_spanned(item, "an outcome is made of a struct"));
    };
    let Fields::Named(fields) = &data.fields else {
        return Err(Error::new_spanned(item, "an outcome is made of fields with names"));
    };
    let mut put = Vec::new();
    for field in &fields.named {
        let Some(ident) = &field.ident else { continue };
        let (mut name, mut skip, mut flat) = (ident.to_string(), false, false);
        for attribute in field.attrs.iter().filter(|one| one.path().is_ident("outcome")) {
            attribute.parse_nested_meta(|meta| {
                if meta.path.is_ident("skip") {
                    skip = true;
                } else if meta.path.is_ident("flat") {
                    flat = true;
                } else if meta.path.is_ident("name") {
                    name = meta.value()?.parse::<LitStr>()?.value();
                } else {
                    return Err(meta.error("skip, flat or name = \"…\""));
                }
                Ok(())
            })?;
        }
        let of = &field.ty;
        if flat {
            put.push(quote! {
                let record = record.with_all(crate::outcome::Outcome::record(&self.#ident));
            });
        } else if !skip {
            put.push(quote! {
                let record = {
                    const NAME: &str = crate::outcome::joined!(#name, <#of as crate::outcome::Item>::UNIT);
                    crate::outcome::Item::put(&self.#ident, record, NAME)
                };
            });
        }
    }
    let of = &item.ident;
    Ok(quote! {
        impl crate::outcome::Outcome for #of {
            fn record(&self) -> crate::outcome::Record {
                let record = crate::outcome::Record::new();
                #(#put)*
                record
            }
        }
    })
}
