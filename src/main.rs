//! Two programs of one name. In the browser: the app. On a computer: `cargo run` sets up the
//! tools, builds the release and serves it.

#[cfg(all(target_arch = "wasm32", feature = "app"))]
fn main() {
    halfcase::screens::start();
}

#[cfg(all(not(target_arch = "wasm32"), feature = "setup"))]
fn main() -> std::process::ExitCode {
    halfcase::setup::main()
}

#[cfg(not(any(
    all(target_arch = "wasm32", feature = "app"),
    all(not(target_arch = "wasm32"), feature = "setup")
)))]
fn main() {}
