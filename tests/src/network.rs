//! The one way out of a browser under test (RFC 1928, no sign-in, CONNECT alone): taken away from all of it at once, its service
//! workers too, without the browser's help.
use std::io::{Error, ErrorKind, Read, Result, Write, copy};
use std::net::{Ipv4Addr, Shutdown, TcpListener, TcpStream};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::spawn;

/// A browser's network. The browser is told its port when it starts.
pub struct Network {
    pub port: u16,
    state: Arc<Mutex<State>>,
}

#[derive(Default)]
struct State {
    cut: bool,
    open: Vec<TcpStream>,
}

impl Network {
    /// A network that works.
    pub fn new() -> Network {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("a port");
        let network = Network { port: listener.local_addr().expect("bound").port(), state: Arc::default() };
        let state = network.state.clone();
        spawn(move || {
            for stream in listener.incoming().flatten() {
                let state = state.clone();
                // One that is refused, cut or left by the browser ends here, as on any network.
                spawn(move || through(stream, &state).ok());
            }
        });
        network
    }

    /// Cuts what is open and refuses what comes, or lets it through again.
    pub fn cut(&self, cut: bool) {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        state.cut = cut;
        for stream in state.open.drain(..) {
            let _gone_already = stream.shutdown(Shutdown::Both);
        }
    }
}

fn through(mut browser: TcpStream, state: &Mutex<State>) -> Result<()> {
    let to = asked(&mut browser)?;
    let server = {
        let mut state = state.lock().unwrap_or_else(PoisonError::into_inner);
        if state.cut {
            return Err(ErrorKind::NetworkUnreachable.into());
        }
        let server = TcpStream::connect((to.0.as_str(), to.1))?;
        state.open.push(browser.try_clone()?);
        state.open.push(server.try_clone()?);
        server
    };
    browser.write_all(&[5, 0, 0, 1, 0, 0, 0, 0, 0, 0])?;
    let (mut from, mut into) = (browser.try_clone()?, server.try_clone()?);
    spawn(move || copy(&mut from, &mut into).and_then(|_| into.shutdown(Shutdown::Write)));
    let (mut from, mut into) = (server, browser);
    copy(&mut from, &mut into)?;
    into.shutdown(Shutdown::Both)
}

/// The host and port a browser asks for.
fn asked(browser: &mut TcpStream) -> Result<(String, u16)> {
    let [_, ways] = take(browser)?;
    browser.read_exact(&mut vec![0; usize::from(ways)])?;
    browser.write_all(&[5, 0])?;
    let host = match take(browser)? {
        [5, 1, 0, 1] => Ipv4Addr::from(take::<4>(browser)?).to_string(),
        [5, 1, 0, 3] => {
            let mut name = vec![0; usize::from(take::<1>(browser)?[0])];
            browser.read_exact(&mut name)?;
            String::from_utf8(name).map_err(Error::other)?
        }
        other => return Err(Error::other(format!("not asked for here: {other:?}"))),
    };
    Ok((host, u16::from_be_bytes(take(browser)?)))
}

fn take<const N: usize>(browser: &mut TcpStream) -> Result<[u8; N]> {
    let mut bytes = [0; N];
    browser.read_exact(&mut bytes)?;
    Ok(bytes)
}
