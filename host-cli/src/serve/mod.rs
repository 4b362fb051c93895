//! The pages of [`web`](crate::web) behind a server on this machine: HTTP by hyper, on one thread; the log is opened
//! on others, so that nothing waits for a disk.

mod connection;
pub mod guard;

use std::future::Future;
use std::io;
use std::net::{IpAddr, SocketAddr, UdpSocket};
use std::sync::Arc;
use std::time::Duration;

use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;

use crate::log::Here;
use crate::store::LogPlace;
use guard::{Guard, Token};

/// The port where none is asked for.
pub const PORT: u16 = 7436;
/// How many connections are served at a time; more wait.
const CONNECTIONS: usize = 64;

/// What is served, and to whom.
#[derive(Clone, Debug)]
pub struct Serving {
    /// Where the log is.
    pub place: LogPlace,
    /// The time, chance and wall clock.
    pub here: Here,
    /// The address to listen at.
    pub listen: IpAddr,
    /// The port; none for [`PORT`], or any that is free.
    pub port: Option<u16>,
    /// How long a head, or what is sent, may take to arrive.
    pub patience: Duration,
}

/// A server that listens, and answers once it [runs](Self::run).
#[derive(Debug)]
pub struct PageServer {
    listener: std::net::TcpListener,
    guard: Guard,
    serving: Serving,
}

impl PageServer {
    /// Begins to listen.
    ///
    /// # Errors
    ///
    /// An address or a port at which it may not.
    pub fn listen(serving: Serving) -> io::Result<Self> {
        let at = |port| std::net::TcpListener::bind((serving.listen, port));
        let listener = match serving.port {
            Some(port) => at(port)?,
            None => at(PORT).or_else(|_| at(0))?,
        };
        listener.set_nonblocking(true)?;
        let listens = listener.local_addr()?;
        let token = (!listens.ip().is_loopback()).then(|| Token::new((serving.here.random)()));
        Ok(Self { listener, guard: Guard { listens, token }, serving })
    }

    /// The address to type into a browser, with the token where one is needed.
    #[must_use]
    pub fn address(&self) -> String {
        let Guard { listens, token } = &self.guard;
        let ip = if listens.ip().is_unspecified() { own_address(listens.ip()) } else { listens.ip() };
        let at = SocketAddr::new(ip, listens.port());
        let token = token.as_ref().map(|token| format!("?token={}", token.text())).unwrap_or_default();
        format!("http://{at}/{token}")
    }

    /// Whether others than this machine can come.
    #[must_use]
    pub const fn is_for_others(&self) -> bool {
        self.guard.token.is_some()
    }

    /// Answers until Ctrl-C, or until it is ended in another way; what was begun is finished.
    ///
    /// # Errors
    ///
    /// A system that gives no thread, socket or signal.
    pub fn run(self) -> io::Result<()> {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        runtime.block_on(async move {
            let ended = ended()?;
            self.serve(ended).await
        })
    }

    async fn serve(self, ended: impl Future<Output = ()>) -> io::Result<()> {
        let Self { listener, guard, serving } = self;
        let listener = TcpListener::from_std(listener)?;
        let patience = serving.patience;
        let mut http = hyper::server::conn::http1::Builder::new();
        http.timer(TokioTimer::new()).header_read_timeout(patience).max_buf_size(64 * 1024);
        let (graceful, room) = (GracefulShutdown::new(), Arc::new(Semaphore::new(CONNECTIONS)));
        let desk = Arc::new(connection::ConnectionDesk { guard, serving });
        tokio::pin!(ended);
        loop {
            let begin = async {
                // Never closed.
                let place = Arc::clone(&room).acquire_owned().await.ok();
                (place, listener.accept().await)
            };
            let (place, accepted) = tokio::select! {
                begun = begin => begun,
                () = &mut ended => break,
            };
            // A guest who left again is no matter; where the system has no socket left, others must end first.
            let Ok((stream, _)) = accepted else {
                tokio::time::sleep(Duration::from_millis(50)).await;
                continue;
            };
            let answer = hyper::service::service_fn({
                let desk = Arc::clone(&desk);
                move |request| connection::answer(Arc::clone(&desk), request)
            });
            let connection = graceful.watch(http.serve_connection(TokioIo::new(stream), answer));
            tokio::spawn(async move {
                // A connection that breaks off is its guest's affair.
                let _ = connection.await;
                drop(place);
            });
        }
        drop(listener);
        // What is being answered is finished; who sends nothing more is not waited for.
        let _ = tokio::time::timeout(patience, graceful.shutdown()).await;
        Ok(())
    }
}

/// Waits until the program is asked to end.
fn ended() -> io::Result<impl Future<Output = ()>> {
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        let (mut interrupt, mut terminate) = (signal(SignalKind::interrupt())?, signal(SignalKind::terminate())?);
        Ok(async move {
            tokio::select! {
                _ = interrupt.recv() => {}
                _ = terminate.recv() => {}
            }
        })
    }
    #[cfg(not(unix))]
    Ok(async {
        let _ = tokio::signal::ctrl_c().await;
    })
}

/// The address that this machine has for others; nothing is sent to find it out.
fn own_address(any: IpAddr) -> IpAddr {
    // Addresses set aside for documents (RFC 5737, RFC 3849): only the way there is looked up.
    let (from, to) = if any.is_ipv4() { ("0.0.0.0:0", "192.0.2.1:9") } else { ("[::]:0", "[2001:db8::1]:9") };
    let found = UdpSocket::bind(from).and_then(|socket| {
        socket.connect(to)?;
        socket.local_addr()
    });
    found.map_or(any, |address| address.ip())
}
