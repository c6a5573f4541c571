//! The commands: `serve` (default), `openapi`, `healthcheck`.

use std::process::ExitCode;
use std::time::Duration;

use loopwright::api::{documentation, serve, telemetry};
use loopwright::settings::Settings;

const USAGE: &str = "usage: loopwright [serve | openapi | healthcheck]

  serve        serve until SIGTERM (default)
  openapi      print the description of the API, as served at LOOPWRIGHT_PUBLIC_URL
  healthcheck  ask the instance at LOOPWRIGHT_LISTEN whether it is ready; exit 0 if so

Settings are environment variables; deploy/README.md lists them.";

fn main() -> ExitCode {
    let arguments: Vec<_> = std::env::args().skip(1).collect();
    let command = arguments.first().map_or("serve", String::as_str);
    let outcome = match (command, arguments.len()) {
        ("serve", 0 | 1) => start(),
        ("openapi", 1) => {
            Settings::from_environment().map(|settings| print!("{}", documentation::pretty(&settings.public_url)))
        }
        ("healthcheck", 1) => check(),
        ("help" | "--help" | "-h", 1) => {
            println!("{USAGE}");
            Ok(())
        }
        _ => Err(USAGE.to_owned()),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn start() -> Result<(), String> {
    let settings = Settings::from_environment()?;
    let _telemetry = telemetry::start(&settings)?;
    telemetry::log_panics();
    let listener = serve::bind(&settings).map_err(|error| error.to_string())?;
    actix_web::rt::System::new().block_on(serve::run(settings, listener)).map_err(|error| error.to_string())
}

/// Asks a running instance; plain HTTP to this machine, so no certificates are needed.
fn check() -> Result<(), String> {
    let settings = Settings::from_environment()?;
    let mut address = settings.probe_listen.unwrap_or(settings.listen);
    if address.ip().is_unspecified() {
        address.set_ip(if address.is_ipv4() { [127, 0, 0, 1].into() } else { std::net::Ipv6Addr::LOCALHOST.into() });
    }
    actix_web::rt::System::new().block_on(async {
        let client = reqwest::Client::builder()
            .timeout(Duration::from_secs(3))
            .no_proxy()
            .build()
            .map_err(|error| error.to_string())?;
        let answer =
            client.get(format!("http://{address}/health/ready")).send().await.map_err(|error| error.to_string())?;
        if answer.status().is_success() { Ok(()) } else { Err(format!("not ready: {}", answer.status())) }
    })
}
