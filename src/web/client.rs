//! From which address a request really comes.

use std::net::{IpAddr, SocketAddr};

use axum::http::{Extensions, HeaderMap, header};

use crate::config::Config;
use crate::shop::sign_in::From;

/// The other end of the TCP connection, put beside each request by the accept loop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Peer(pub SocketAddr);

/// The client's address. A proxy's word is taken only from a proxy we trust: its list is read from the right, and the
/// first address that is no such proxy is the client.
pub fn address(config: &Config, headers: &HeaderMap, extensions: &Extensions) -> Option<IpAddr> {
    let peer = extensions.get::<Peer>().map(|peer| peer.0.ip().to_canonical())?;
    if !config.trusted_proxies.contains(&peer) {
        return Some(peer);
    }
    let said = headers.get_all("x-forwarded-for").iter().filter_map(|value| value.to_str().ok());
    let hops: Vec<&str> = said.flat_map(|value| value.split(',')).map(str::trim).collect();
    for hop in hops.into_iter().rev() {
        let Ok(hop) = hop.parse::<IpAddr>() else { return Some(peer) };
        if !config.trusted_proxies.contains(&hop.to_canonical()) {
            return Some(hop.to_canonical());
        }
    }
    Some(peer)
}

/// What a sign-in notes about where it came from.
pub fn from(config: &Config, headers: &HeaderMap, extensions: &Extensions) -> From {
    let address = address(config, headers, extensions);
    let agent = headers.get(header::USER_AGENT).and_then(|agent| agent.to_str().ok()).unwrap_or_default();
    From {
        address: address.map(|ip| ip.to_string()).unwrap_or_default(),
        agent: agent.to_owned(),
        is_plain_http: !config.is_https() && address.is_some_and(|ip| !ip.is_loopback()),
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;

    fn asked(peer: &str, trusted: &[&str], said: &str) -> String {
        let mut config = Config::of_folder(Path::new("x"));
        config.trusted_proxies = trusted.iter().map(|ip| ip.parse().unwrap()).collect();
        let (mut headers, mut extensions) = (HeaderMap::new(), Extensions::new());
        extensions.insert(Peer(peer.parse().unwrap()));
        headers.insert("x-forwarded-for", said.parse().unwrap());
        address(&config, &headers, &extensions).unwrap().to_string()
    }

    #[test]
    fn a_forwarded_address_counts_only_from_a_trusted_proxy() {
        assert_eq!(asked("203.0.113.9:4711", &[], "198.51.100.1"), "203.0.113.9");
        assert_eq!(asked("127.0.0.1:4711", &["127.0.0.1"], "198.51.100.1"), "198.51.100.1");
        assert_eq!(
            asked("127.0.0.1:4711", &["127.0.0.1", "10.0.0.2"], "6.6.6.6, 198.51.100.1, 10.0.0.2"),
            "198.51.100.1"
        );
        assert_eq!(asked("127.0.0.1:4711", &["127.0.0.1"], "nonsense"), "127.0.0.1");
        assert_eq!(asked("[::ffff:203.0.113.9]:1", &[], "198.51.100.1"), "203.0.113.9");
    }
}
