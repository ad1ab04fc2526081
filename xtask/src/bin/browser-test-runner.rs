//! Carries wasm tests into a browser: the stock runner, at the version of the one lock file.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
