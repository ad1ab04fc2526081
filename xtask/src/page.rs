//! Puts the site together from its parts: hashed names, integrity, the page, the boot script and the service worker.

use crate::style;
use anyhow::{Result, bail};
use std::collections::BTreeMap;
use xtask::hash::{integrity, short_hash};

/// What a site is made of.
pub struct Parts {
    /// The template of the page.
    pub page: String,
    /// The script that starts the app, a template.
    pub boot: String,
    /// The service worker, a template.
    pub worker: String,
    /// The style sheets in their order.
    pub style: String,
    /// The script that wasm-bindgen wrote.
    pub glue: String,
    /// The app, or what of it comes first.
    pub wasm: Vec<u8>,
    /// The parts that come later, by the names that the loader knows them by.
    pub parts: BTreeMap<String, Vec<u8>>,
    /// The script that fetches them, as the tool wrote it; empty where there are none.
    pub loader: String,
    /// The words of other languages by tag: fetched when chosen.
    pub words: BTreeMap<String, Vec<u8>>,
    /// Scripts that the glue imports by their path, if a library brought any.
    pub snippets: BTreeMap<String, Vec<u8>>,
    /// Files with fixed names: icons, manifest.
    pub fixed: BTreeMap<String, Vec<u8>>,
    /// A script for development alone, by its name.
    pub extra: Option<(String, String)>,
}

/// A whole site.
pub struct Site {
    /// Every file by its name.
    pub files: BTreeMap<String, Vec<u8>>,
    /// The names of what a first visit loads.
    pub first_visit: Vec<String>,
    /// Names this very content.
    pub version: String,
}

/// Joins the parts.
///
/// # Errors
/// A template names something that is not there.
pub fn assemble(parts: Parts) -> Result<Site> {
    let mut files = parts.fixed;
    let mut first_visit: Vec<String> =
        files.keys().filter(|name| !name.ends_with(".png")).cloned().collect();
    let mut add = |stem: &str, ending: &str, bytes: Vec<u8>| {
        let name = format!("{stem}-{}.{ending}", short_hash(&bytes));
        let integrity = integrity(&bytes);
        first_visit.push(name.clone());
        files.insert(name.clone(), bytes);
        (name, integrity)
    };
    let (wasm, wasm_integrity) = add("app", "wasm", parts.wasm);
    let mut named = BTreeMap::new();
    for (name, module) in parts.parts {
        named.insert(name.clone(), add(&name, "wasm", module));
    }
    let glue = with_loader(&parts.glue, &parts.loader, &named)?;
    let (glue, glue_integrity) = add("app", "js", glue.into_bytes());
    let (style, style_integrity) = add("style", "css", style::minify(&parts.style).into_bytes());
    // The boot script stands in the page: it is what tells that another part is missing.
    let boot = fill(
        &without_comment_lines(&parts.boot),
        &[("app_js", &glue), ("app_wasm", &wasm), ("app_wasm_sri", &wasm_integrity)],
    )?;
    if boot.contains("</") {
        bail!("the boot script stands in the page, and must not hold \"</\"");
    }
    // What a script imports is checked by this map.
    let map = format!("{{\"integrity\":{{\"./{glue}\":\"{glue_integrity}\"}}}}");
    first_visit.extend(parts.snippets.keys().cloned());
    files.extend(parts.snippets);
    let mut languages = String::new();
    let mut later = Vec::new();
    for (tag, table) in parts.words {
        let name = format!("words-{tag}-{}.bin", short_hash(&table));
        languages += &format!(" data-words-{tag}=\"{name} {}\"", integrity(&table));
        later.push(name.clone());
        files.insert(name, table);
    }
    let extra = match parts.extra {
        None => String::new(),
        Some((name, script)) => {
            files.insert(name.clone(), script.into_bytes());
            format!("\n<script type=\"module\" src=\"./{name}\"></script>")
        }
    };
    let contents: String =
        files.iter().map(|(name, bytes)| format!("{name} {}\n", integrity(bytes))).collect();
    let version = short_hash(format!("{}{boot}{}{contents}", parts.page, parts.worker).as_bytes());
    let page = fill(
        &parts.page,
        &[
            ("version", &version),
            ("app_js", &glue),
            ("app_js_sri", &glue_integrity),
            ("map", &map),
            ("map_sri", &integrity(map.as_bytes())),
            ("style", &style),
            ("style_sri", &style_integrity),
            ("boot", &boot),
            ("boot_sri", &integrity(boot.as_bytes())),
            ("extra", &extra),
            ("words", &languages),
        ],
    )?;
    files.insert("index.html".to_owned(), page.into_bytes());
    first_visit.push("index.html".to_owned());
    let list = kept_files(&files, &first_visit);
    let on_demand = kept_files(&files, &later);
    let worker = fill(
        &without_comment_lines(&parts.worker),
        &[
            ("version", &short_hash([&*list, &*on_demand].concat().as_bytes())),
            ("files", &list),
            ("later", &on_demand),
        ],
    )?;
    files.insert("sw.js".to_owned(), worker.into_bytes());
    first_visit.push("sw.js".to_owned());
    #[allow(clippy::disallowed_methods, reason = "not part of the app")]
    first_visit.sort();
    Ok(Site { files, first_visit, version })
}

/// How the glue starts the first part from what was fetched: whatever type it comes as.
const START: &str = "__wbg_load";

/// Puts the loader of the parts into the glue. Two scripts that import each other could not both be named by what they hold.
fn with_loader(
    glue: &str,
    loader: &str,
    parts: &BTreeMap<String, (String, String)>,
) -> Result<String> {
    if loader.is_empty() {
        return Ok(glue.to_owned());
    }
    let Some((before, import, after)) = imported(glue) else {
        bail!("the glue does not import the loader of the parts");
    };
    let mut script = String::new();
    let mut shared = Vec::new();
    for line in loader.lines() {
        if line.starts_with("import ") {
            // The glue itself.
            continue;
        }
        match line.strip_prefix("export const ") {
            Some(rest) => {
                shared.extend(rest.split_once(' ').map(|(name, _)| name));
                script = script + "const " + rest + "\n";
            }
            None => script = script + line + "\n",
        }
    }
    let plain = "WebAssembly.instantiateStreaming(src, imports)";
    if !script.contains(plain) || !glue.contains(&format!("function {START}(")) {
        bail!("the parts are not started by {plain} any more, or the first one not by {START}");
    }
    script = script.replace(plain, &format!("{START}(await src, imports)"));
    for (name, (file, integrity)) in parts {
        let plain = format!("new URL(\"./{name}.wasm\", import.meta.url)");
        let checked = format!(
            "new URL(\"./{file}\", import.meta.url), {{ integrity: \"{integrity}\", credentials: \"same-origin\" }}"
        );
        if !script.contains(&plain) {
            bail!("the loader fetches no part called {name}");
        }
        script = script.replace(&plain, &checked);
    }
    let shared = shared.join(", ");
    Ok(format!(
        "{before}const {import} = (() => {{\n{script}return {{ {shared} }};\n}})();\n{after}"
    ))
}

/// The glue before and after the line that imports the loader, and the name it is imported by.
fn imported(glue: &str) -> Option<(String, String, String)> {
    let line =
        glue.lines().find(|line| line.starts_with("import ") && line.contains("parts.js"))?;
    let name = line.strip_prefix("import * as ")?.split(' ').next()?;
    let (before, after) = glue.split_once(line)?;
    Some((before.to_owned(), name.to_owned(), after.to_owned()))
}

/// The service worker's list: the page goes by "./", since some hosts redirect its file name.
fn kept_files(files: &BTreeMap<String, Vec<u8>>, kept: &[String]) -> String {
    let rows = files.iter().filter(|(name, _)| kept.contains(name)).map(|(name, bytes)| {
        let address = if name == "index.html" { "./".to_owned() } else { format!("./{name}") };
        format!("[\"{address}\",\"{}\"]", integrity(bytes))
    });
    format!("[{}]", rows.collect::<Vec<_>>().join(",\n"))
}

fn fill(template: &str, values: &[(&str, &str)]) -> Result<String> {
    let mut text = template.to_owned();
    for (name, value) in values {
        let hole = format!("{{{{{name}}}}}");
        if !text.contains(&hole) {
            bail!("a template lacks {hole}");
        }
        text = text.replace(&hole, value);
    }
    if let Some(at) = text.find("{{") {
        let hole: String = text.chars().skip(text[..at].chars().count()).take(30).collect();
        bail!("nothing fills {hole:?} in a template");
    }
    Ok(text)
}

fn without_comment_lines(script: &str) -> String {
    script
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .fold(String::new(), |text, line| text + line.trim_start() + "\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts() -> Parts {
        Parts {
            page: "<{{version}}|{{app_js}} {{app_js_sri}}|{{map}} {{map_sri}}|{{style}} {{style_sri}}|{{boot}} {{boot_sri}}|{{words}}>{{extra}}".to_owned(),
            boot: "// why\nload({{app_js}}, {{app_wasm}}, {{app_wasm_sri}})".to_owned(),
            worker: "v={{version}};f={{files}};l={{later}}".to_owned(),
            style: "a { b: c }".to_owned(),
            glue: "glue".to_owned(),
            wasm: b"wasm".to_vec(),
            parts: BTreeMap::new(),
            loader: String::new(),
            words: BTreeMap::from([("es".to_owned(), b"hola".to_vec())]),
            snippets: BTreeMap::new(),
            fixed: BTreeMap::from([("icon.svg".to_owned(), b"s".to_vec()), ("icon-192.png".to_owned(), b"p".to_vec())]),
            extra: None,
        }
    }

    #[test]
    fn a_part_that_comes_later_is_checked_by_its_hash() {
        let loader = "import { initSync } from \"./app.js\";\nlet shared;\nexport const load_more = wrap(() => {\n    const src = fetch(new URL(\"./more.wasm\", import.meta.url));\n    return WebAssembly.instantiateStreaming(src, imports);\n});\n";
        let glue = "import * as import1 from \"./parts.js\"\nuse(import1);\nasync function __wbg_load(module, imports) {}\n";
        let parted = |loader: &str, glue: &str| {
            assemble(Parts {
                parts: BTreeMap::from([("more".to_owned(), b"more".to_vec())]),
                loader: loader.to_owned(),
                glue: glue.to_owned(),
                ..parts()
            })
        };
        let site = parted(loader, glue).unwrap();
        let part = site.files.keys().find(|name| name.starts_with("more-")).unwrap();
        let script =
            site.files.keys().find(|name| name.ends_with(".js") && name.starts_with("app-"));
        let script = text(&site, script.unwrap());
        let checked =
            format!("./{part}\", import.meta.url), {{ integrity: \"{}\"", integrity(b"more"));
        assert!(script.contains(&checked), "{script}");
        assert!(
            !script.contains("import ") && script.contains("return { load_more };"),
            "{script}"
        );
        assert!(site.first_visit.contains(part) && text(&site, "sw.js").contains(part.as_str()));
        // Whatever the tools write otherwise one day is told, not published.
        assert!(parted(loader, "use();").is_err());
        assert!(parted(loader, &glue.replace("__wbg_load", "load")).is_err());
        assert!(parted(&loader.replace("more.wasm", "other.wasm"), glue).is_err());
        assert!(parted(&loader.replace("instantiateStreaming", "instantiate"), glue).is_err());
    }

    fn text(site: &Site, name: &str) -> String {
        String::from_utf8(site.files[name].clone()).unwrap()
    }

    #[test]
    fn the_worker_keeps_every_file_of_the_first_visit_with_its_hash() {
        let site = assemble(parts()).unwrap();
        let worker = text(&site, "sw.js");
        for name in site.first_visit.iter().filter(|name| *name != "sw.js" && *name != "index.html")
        {
            let row = format!("[\"./{name}\",\"{}\"]", integrity(&site.files[name]));
            assert!(worker.contains(&row), "{row} in {worker}");
        }
        assert!(worker.contains(&format!("[\"./\",\"{}\"]", integrity(&site.files["index.html"]))));
        assert!(
            !worker.contains("index.html") && !worker.contains("sw.js") && !worker.contains(".png")
        );
    }

    #[test]
    fn another_language_is_named_by_the_page_and_no_part_of_the_first_visit() {
        let site = assemble(parts()).unwrap();
        let name = site.files.keys().find(|name| name.starts_with("words-es-")).unwrap();
        let integrity = integrity(&site.files[name]);
        assert!(!site.first_visit.contains(name), "{:?}", site.first_visit);
        let page = text(&site, "index.html");
        assert!(page.contains(&format!(" data-words-es=\"{name} {integrity}\"")), "{page}");
        let worker = text(&site, "sw.js");
        let (kept, later) = worker.split_once(";l=").unwrap();
        assert!(!kept.contains(name) && later.contains(&format!("[\"./{name}\",\"{integrity}\"]")));
        let words = BTreeMap::from([("es".to_owned(), b"buenas".to_vec())]);
        let other = assemble(Parts { words, ..parts() }).unwrap();
        assert_ne!(text(&site, "sw.js"), text(&other, "sw.js"));
        assert_ne!(site.version, other.version);
    }

    #[test]
    fn a_changed_part_changes_its_name_and_the_version() {
        let before = assemble(parts()).unwrap();
        let after = assemble(Parts { wasm: b"other".to_vec(), ..parts() }).unwrap();
        assert_ne!(before.version, after.version);
        assert_ne!(text(&before, "sw.js"), text(&after, "sw.js"));
        let names = |site: &Site| {
            site.files.keys().filter(|name| name.starts_with("app-")).cloned().collect::<Vec<_>>()
        };
        assert!(
            names(&before)
                .iter()
                .filter(|name| !name.starts_with("app-") || name.ends_with("wasm"))
                .all(|name| !names(&after).contains(name))
        );
        assert_eq!(before.files.len(), after.files.len());
    }

    #[test]
    fn a_hole_without_a_value_is_refused() {
        assert!(
            assemble(Parts {
                worker: "{{version}}{{files}}{{later}}{{more}}".to_owned(),
                ..parts()
            })
            .is_err()
        );
        assert!(assemble(Parts { boot: "{{app_js}}".to_owned(), ..parts() }).is_err());
    }
}
