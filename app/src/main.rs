//! Where the browser starts the app.

fn main() {
    app::start();
}
