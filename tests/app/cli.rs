//! The command line as it is started: exit codes, and one clear sentence for each way of not starting.

use std::io::{BufRead, BufReader};
use std::net::TcpListener;
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};

use tempfile::TempDir;

fn fuelwright(data: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fuelwright"));
    command.args(arguments).arg("--data").arg(data).env_clear();
    command
}

/// One that serves, ended when dropped.
struct Serving(Child);

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

fn serving(data: &Path) -> (Serving, Vec<String>) {
    let mut command = fuelwright(data, &["serve", "--listen", "127.0.0.1:0"]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap();
    let lines = BufReader::new(child.stdout.take().unwrap()).lines();
    let said = lines.map(Result::unwrap).take(4).collect();
    (Serving(child), said)
}

#[track_caller]
fn cannot_start(output: &Output, wanted: &str) {
    let said = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(said.contains(wanted), "{wanted:?} is not in {said:?}");
    assert_eq!(said.trim().lines().count(), 1, "more than one line: {said}");
}

#[test]
fn the_first_start_prints_a_code_and_a_second_process_is_refused() {
    let folder = TempDir::new().unwrap();
    let data = folder.path().join("shop");
    let (serving, said) = serving(&data);
    assert!(said[0].contains("serves") && said[0].contains("http://127.0.0.1:"), "{said:?}");
    assert!(said[1].contains("/set-up") && said[3].trim().len() == 43, "{said:?}");
    let output = fuelwright(&data, &["serve"]).output().unwrap();
    cannot_start(&output, "another Fuelwright is running on");
    let output = fuelwright(&data, &["restore", "no-such-file.tar"]).output().unwrap();
    cannot_start(&output, "another Fuelwright is running on");
    drop(serving);
}

#[test]
fn a_port_in_use_a_wrong_key_and_a_file_for_a_folder_are_each_one_sentence() {
    let folder = TempDir::new().unwrap();
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let output = fuelwright(folder.path(), &["serve", "--listen", &address]).output().unwrap();
    cannot_start(&output, "is in use by another program");

    std::fs::write(folder.path().join("fuelwright.toml"), "lissten = 1\n").unwrap();
    let output = fuelwright(folder.path(), &["serve"]).output().unwrap();
    cannot_start(&output, "fuelwright.toml line 1: lissten");

    let file = folder.path().join("file");
    std::fs::write(&file, "").unwrap();
    let output = fuelwright(&file, &["serve"]).output().unwrap();
    cannot_start(&output, "cannot make the folder");
}

#[test]
fn words_it_does_not_know_are_bad_input() {
    let folder = TempDir::new().unwrap();
    for arguments in [vec!["sreve"], vec!["serve", "--lisen", "x"], vec![]] {
        assert_eq!(fuelwright(folder.path(), &arguments).output().unwrap().status.code(), Some(2), "{arguments:?}");
    }
    assert_eq!(fuelwright(folder.path(), &["--help"]).output().unwrap().status.code(), Some(0));
}
