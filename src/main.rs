//! Arguments in, exit code out.

fn main() -> std::process::ExitCode {
    fuelwright::cli::run()
}
