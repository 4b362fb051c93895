//! The program's own requests to the pages of another tenter (`tenter serve`).

use std::fmt;
use std::time::Duration;

use http_body_util::{BodyExt as _, Full, LengthLimitError, Limited};
use hyper::body::{Bytes, Incoming};
use hyper::header::{CONTENT_TYPE, COOKIE, HOST, ORIGIN};
use hyper::{Method, Request, Response, StatusCode, Uri};
use hyper_util::rt::TokioIo;
use tokio::net::TcpStream;
use tokio::runtime::Runtime;

use super::SLOW;

/// How long a server may say nothing.
const SILENT: Duration = Duration::from_secs(120);
/// The most that is taken of one answer, in bytes: a log fits, and no server fills this machine.
const MOST: usize = 256 << 20;

/// Why the pages of another tenter could not be asked, or what they said.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PagesError {
    /// The address is none of theirs.
    #[error("no address of pages")]
    Address,
    /// Nothing answers there: what the system says.
    #[error("unreachable: {0}")]
    Unreachable(String),
    /// The connection broke off.
    #[error("connection lost")]
    Lost,
    /// What came is no answer of such pages.
    #[error("no pages of tenter")]
    Foreign,
    /// They let nobody in without the token, or not with this one.
    #[error("not let in: {0}")]
    NotLetIn(String),
    /// They would not do it, and say why.
    #[error("refused: {0}")]
    Refused(String),
}

/// The pages of another tenter. The token that lets one in is never shown.
pub struct PageClient {
    host: String,
    token: Option<String>,
    runtime: Runtime,
}

impl fmt::Debug for PageClient {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("PageClient").field("host", &self.host).finish_non_exhaustive()
    }
}

impl PageClient {
    /// Whether a text is meant as an address of pages.
    #[must_use]
    pub fn is_meant(text: &str) -> bool {
        let begins = |scheme: &str| text.get(..scheme.len()).is_some_and(|start| start.eq_ignore_ascii_case(scheme));
        begins("http://") || begins("https://")
    }

    /// Of an address as `tenter serve` prints it: `http://192.168.1.20:7436/?token=…`. A `token` from elsewhere is used where
    /// the address has none.
    ///
    /// # Errors
    ///
    /// [`PagesError::Address`], or a system that gives no thread.
    pub fn new(address: &str, token: Option<String>) -> Result<Self, PagesError> {
        let uri: Uri = address.trim().parse().map_err(|_| PagesError::Address)?;
        let host = uri.authority().filter(|host| !host.as_str().contains('@')).ok_or(PagesError::Address)?;
        let is_plain = uri.scheme_str() == Some("http") && matches!(uri.path(), "" | "/");
        if !is_plain {
            return Err(PagesError::Address);
        }
        let named = uri.query().unwrap_or_default().split('&').find_map(|pair| pair.strip_prefix("token="));
        let token = named.map(str::to_owned).or(token).filter(|token| !token.is_empty());
        if token.as_deref().is_some_and(|token| !token.bytes().all(|byte| byte.is_ascii_alphanumeric())) {
            return Err(PagesError::Address);
        }
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
        let runtime = runtime.map_err(|error| PagesError::Unreachable(error.to_string()))?;
        Ok(Self { host: host.as_str().to_owned(), token, runtime })
    }

    /// What to call them: the address without its token.
    #[must_use]
    pub fn name(&self) -> String {
        format!("http://{}", self.host)
    }

    /// What lies at a path.
    ///
    /// # Errors
    ///
    /// [`PagesError`].
    pub fn get(&self, path: &str) -> Result<Vec<u8>, PagesError> {
        self.ask(Method::GET, path, Vec::new())
    }

    /// Sends a text to a path; what is answered.
    ///
    /// # Errors
    ///
    /// [`PagesError`].
    pub fn post(&self, path: &str, body: Vec<u8>) -> Result<Vec<u8>, PagesError> {
        self.ask(Method::POST, path, body)
    }

    fn ask(&self, method: Method, path: &str, body: Vec<u8>) -> Result<Vec<u8>, PagesError> {
        let mut request = Request::builder().method(method).uri(path).header(HOST, &self.host);
        request = request.header(ORIGIN, self.name()).header(CONTENT_TYPE, "text/plain; charset=utf-8");
        if let Some(token) = &self.token {
            let port = self.host.rsplit_once(':').map_or("80", |(_, port)| port);
            request = request.header(COOKIE, format!("tenter-{port}={token}"));
        }
        let request = request.body(Full::new(Bytes::from(body))).map_err(|_| PagesError::Address)?;
        self.runtime.block_on(async {
            // A connection for each: nothing waits in one while logs are compared.
            let place = if self.host.contains(':') { self.host.clone() } else { format!("{}:80", self.host) };
            let connected = tokio::time::timeout(SLOW, TcpStream::connect(place)).await;
            let stream = match connected {
                Ok(Ok(stream)) => stream,
                Ok(Err(error)) => return Err(PagesError::Unreachable(error.to_string())),
                Err(error) => return Err(PagesError::Unreachable(error.to_string())),
            };
            let shaken = hyper::client::conn::http1::handshake(TokioIo::new(stream)).await;
            let (mut sender, connection) = shaken.map_err(|_| PagesError::Lost)?;
            // What goes wrong with it is told by what was sent.
            let running = tokio::spawn(async { drop(connection.await) });
            let answer = tokio::time::timeout(SILENT, sender.send_request(request)).await;
            let answer = answer.map_err(|_| PagesError::Lost)?.map_err(|error| wrong(&error))?;
            let answered = answered(answer).await;
            running.abort();
            answered
        })
    }
}

fn wrong(error: &hyper::Error) -> PagesError {
    if error.is_parse() { PagesError::Foreign } else { PagesError::Lost }
}

async fn answered(answer: Response<Incoming>) -> Result<Vec<u8>, PagesError> {
    let status = answer.status();
    let body = tokio::time::timeout(10 * SILENT, Limited::new(answer.into_body(), MOST).collect()).await;
    let body = match body {
        Ok(Ok(body)) => body.to_bytes().to_vec(),
        Ok(Err(error)) if error.is::<LengthLimitError>() => return Err(PagesError::Foreign),
        _ => return Err(PagesError::Lost),
    };
    let words = || String::from_utf8_lossy(&body).lines().next().unwrap_or_default().to_owned();
    match status {
        StatusCode::OK => Ok(body),
        StatusCode::FORBIDDEN => Err(PagesError::NotLetIn(words())),
        StatusCode::UNPROCESSABLE_ENTITY | StatusCode::PAYLOAD_TOO_LARGE => Err(PagesError::Refused(words())),
        StatusCode::BAD_REQUEST | StatusCode::REQUEST_TIMEOUT => Err(PagesError::Lost),
        _ => Err(PagesError::Foreign),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_read_as_serve_prints_it() {
        let pages = PageClient::new("http://192.168.1.20:7436/?token=0abc", None).unwrap();
        assert_eq!((pages.name().as_str(), pages.token.as_deref()), ("http://192.168.1.20:7436", Some("0abc")));
        assert!(!format!("{pages:?}").contains("0abc"), "the token is not shown");
        let pages = PageClient::new("http://127.0.0.1:7436", Some("1d".into())).unwrap();
        assert_eq!(pages.token.as_deref(), Some("1d"));
        for wrong in [
            "https://192.168.1.20:7436",
            "http://",
            "http://a:b@c/",
            "http://host/cloths",
            "http://h/?token=a%0d",
            "host:7436",
        ] {
            assert_eq!(PageClient::new(wrong, None).err(), Some(PagesError::Address), "{wrong}");
        }
        assert!(PageClient::is_meant("HTTP://x") && PageClient::is_meant("https://x") && !PageClient::is_meant("http"));
    }
}
