//! One request on its way in, and its answer on its way out.

use core::cell::RefCell;
use core::convert::Infallible;
use std::sync::Arc;
use std::time::{Duration, Instant};

use http_body_util::{BodyExt as _, Full, LengthLimitError, Limited};
use hyper::body::{Body as _, Bytes, Incoming};
use hyper::header::{CONTENT_TYPE, COOKIE, HOST, HeaderMap, HeaderName, HeaderValue, ORIGIN};
use hyper::{Method, Request, Response, StatusCode};

use super::Serving;
use super::guard::{Admission, Guard, Head};
use crate::store::LogWithDrafts;
use crate::web;

/// What every connection needs.
#[derive(Debug)]
pub struct ConnectionDesk {
    /// Who is let in.
    pub guard: Guard,
    /// What is served.
    pub serving: Serving,
}

type Answer = Response<Full<Bytes>>;

/// Answers a request.
pub async fn answer(desk: Arc<ConnectionDesk>, request: Request<Incoming>) -> Result<Answer, Infallible> {
    let only_head = request.method() == Method::HEAD;
    let mut answer = answered(desk, request).await;
    if only_head {
        *answer.body_mut() = Full::default();
    }
    Ok(answer)
}

async fn answered(desk: Arc<ConnectionDesk>, request: Request<Incoming>) -> Answer {
    let head = head_of(&request);
    match desk.guard.admits(&head) {
        Admission::Admitted => {}
        Admission::Paired => return paired(&desk.guard, &request),
        Admission::ForeignHost => {
            return plain(
                StatusCode::FORBIDDEN,
                "This address is not one of this server's. Open the one that it prints.",
            );
        }
        Admission::ForeignOrigin => {
            return plain(StatusCode::FORBIDDEN, "Another page sent this. Open the page here and send it again.");
        }
        Admission::NotPaired => {
            return plain(
                StatusCode::FORBIDDEN,
                "This page is for those who were let in. Scan the code that tenter serve prints, or type the whole address.",
            );
        }
    }
    let method = match *request.method() {
        Method::GET | Method::HEAD => web::Method::Get,
        Method::POST => web::Method::Post,
        _ => return plain(StatusCode::METHOD_NOT_ALLOWED, "This page can be read and sent to, and nothing else."),
    };
    let (path, query) = (request.uri().path().to_owned(), request.uri().query().unwrap_or_default().to_owned());
    let content_type = text(request.headers(), &CONTENT_TYPE).unwrap_or_default().to_owned();
    let most = web::most_bytes(&path);
    let too_much = || plain(StatusCode::PAYLOAD_TOO_LARGE, "That is more than fits. Go back and send less.");
    if request.body().size_hint().lower() > most {
        return too_much();
    }
    let most = usize::try_from(most).unwrap_or(usize::MAX);
    let arriving = Limited::new(request.into_body(), most).collect();
    let body = match tokio::time::timeout(6 * desk.serving.patience, arriving).await {
        Ok(Ok(body)) => body.to_bytes().to_vec(),
        Ok(Err(error)) if error.is::<LengthLimitError>() => return too_much(),
        Ok(Err(_)) => return plain(StatusCode::BAD_REQUEST, "That did not arrive whole. Go back and send it again."),
        Err(_) => {
            return plain(StatusCode::REQUEST_TIMEOUT, "That took too long to arrive. Go back and send it again.");
        }
    };
    let request = web::Request { method, path, query, content_type, body };
    let done = tokio::task::spawn_blocking(move || from_log(&desk.serving, &request));
    match done.await {
        Ok(response) => carried(response),
        Err(_) => plain(StatusCode::INTERNAL_SERVER_ERROR, "Something went wrong in tenter. Nothing was half done."),
    }
}

/// How long a connection to a log on a server is used before its schema is looked at again.
const KEPT: Duration = Duration::from_secs(60);

type KeptLog = Option<(Instant, Box<dyn LogWithDrafts>)>;

thread_local! {
    /// The log on a server that this thread opened for an earlier request. Threads that have nothing to do end, and their
    /// connections with them.
    static OPENED: RefCell<KeptLog> = const { RefCell::new(None) };
}

/// Answers from the log. A file is opened for each request, for another may have been put in its place; a connection to a
/// server is used again, since it takes longer to make than most pages do.
fn from_log(serving: &Serving, request: &web::Request) -> web::Response {
    let Serving { place, here, .. } = serving;
    // Taken out: where a page panics, the log that it used is not used again.
    let kept = OPENED.take().filter(|(since, _)| since.elapsed() < KEPT);
    let opened = kept.map_or_else(|| Ok((Instant::now(), place.open(*here)?)), Ok);
    match opened {
        Ok((since, mut log)) => {
            let response = web::respond(request, &mut *log);
            if place.file().is_none() {
                OPENED.set(Some((since, log)));
            }
            response
        }
        Err(error) => web::unreadable(&error),
    }
}

fn text<'h>(heads: &'h HeaderMap, name: &HeaderName) -> Option<&'h str> {
    heads.get(name)?.to_str().ok()
}

fn head_of(request: &Request<Incoming>) -> Head<'_> {
    let heads = request.headers();
    // Two names, or two origins, are nobody's.
    let only = |name: &HeaderName| text(heads, name).filter(|_| heads.get_all(name).iter().count() == 1);
    Head {
        sends: !matches!(*request.method(), Method::GET | Method::HEAD),
        host: only(&HOST).filter(|host| request.uri().authority().is_none_or(|named| named.as_str() == *host)),
        origin: if heads.contains_key(ORIGIN) { Some(only(&ORIGIN).unwrap_or_default()) } else { None },
        fetch_site: text(heads, &HeaderName::from_static("sec-fetch-site")),
        cookie: text(heads, &COOKIE),
        query: request.uri().query().unwrap_or_default(),
    }
}

/// Keeps the token where it came, and asks again without it.
fn paired(guard: &Guard, request: &Request<Incoming>) -> Answer {
    let token = guard.token.as_ref().map(|token| token.text().to_owned()).unwrap_or_default();
    let cookie = format!("{}={token}; HttpOnly; SameSite=Strict; Path=/", guard.cookie());
    let mut response = web::Response::see(request.uri().path());
    response.headers.push(("set-cookie", cookie));
    carried(response)
}

fn plain(status: StatusCode, words: &str) -> Answer {
    carried(web::Response::plain(status.as_u16(), words))
}

/// Our answer as hyper carries it.
fn carried(response: web::Response) -> Answer {
    let mut answer = Response::new(Full::new(Bytes::from(response.body)));
    *answer.status_mut() = StatusCode::from_u16(response.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR);
    for (name, value) in response.headers {
        if let Ok(value) = HeaderValue::try_from(value) {
            answer.headers_mut().insert(HeaderName::from_static(name), value);
        }
    }
    answer
}
