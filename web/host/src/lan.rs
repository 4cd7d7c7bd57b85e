//! The addresses under which other devices find this machine.
use std::net::{Ipv4Addr, SocketAddr, UdpSocket};

/// The address a way out of this machine starts from; nothing is sent to find it.
pub fn addresses() -> Vec<Ipv4Addr> {
    // Far, private and documentation addresses: each may leave by another door. A datagram socket that connects sends nothing.
    let mut found: Vec<Ipv4Addr> = ["192.0.2.1:9", "192.168.0.1:9", "10.0.0.1:9", "172.16.0.1:9"].into_iter().filter_map(way).collect();
    found.sort();
    found.dedup();
    found
}

fn way(to: &str) -> Option<Ipv4Addr> {
    let socket = UdpSocket::bind("0.0.0.0:0").ok()?;
    socket.connect(to).ok()?;
    match socket.local_addr().ok()? {
        SocketAddr::V4(at) if !at.ip().is_loopback() => Some(*at.ip()),
        _ => None,
    }
}
