//! Forms without a script, and forms that are sent twice.

use crate::server::{Server, field};

/// Sends a form twice; where it led. The second adds nothing.
fn twice(server: &Server, page: &str, form: &str, target: &str, fields: &[(&str, &str)]) -> String {
    let once = field(&server.get(page).text(), form, "once");
    let mut all = vec![("once", once.as_str())];
    all.extend(fields);
    let first = server.post(target, &all);
    assert_eq!(first.status, 303, "{target}: {}", first.text());
    let count = server.count();
    let second = server.post(target, &all);
    assert_eq!(second.status, 303, "{target} again: {}", second.text());
    assert_eq!(server.count(), count, "{target} stored twice");
    first.head("location").to_owned()
}

#[test]
fn every_form_stores_once_however_often_it_is_sent() {
    let server = Server::empty(&[]);
    let cloth = [("name", "Slate rib"), ("construction", "knit"), ("length", "2m"), ("width", "150cm")];
    let cloth = twice(&server, "/cloths/new", "cloth", "/cloths/new", &cloth);
    twice(
        &server,
        &format!("{cloth}/cut"),
        "cut",
        &format!("{cloth}/cut"),
        &[("length", "50cm"), ("note", "a pocket")],
    );
    assert!(server.get(&cloth).text().contains("1.50\u{a0}m"), "2 m less 0.5 m");
    let wash = [("lengthwise", "50cm to 49cm"), ("crosswise", "50cm to 49.5cm"), ("note", "40 °C")];
    twice(&server, &format!("{cloth}/wash"), "wash", &format!("{cloth}/wash"), &wash);
    twice(&server, &format!("{cloth}/learned"), "learned", &format!("{cloth}/learned"), &[("needle", "stretch 75")]);
    let pattern =
        [("pattern", "Choir trousers"), ("view", "A"), ("role", "main"), ("crosswise", "5%"), ("cloth", "1m of 140cm")];
    let pattern = twice(&server, "/patterns/new", "pattern", "/patterns/new", &pattern);
    let role = [("view", "A"), ("role", "waistband"), ("crosswise", "5%")];
    twice(&server, &format!("{pattern}/new"), "role", &format!("{pattern}/new"), &role);
    let begin = format!("{pattern}/begin?view=A");
    let page = server.get(&begin).text();
    let slate = page
        .split("<option value=\"")
        .find(|one| one.contains("Slate rib"))
        .unwrap()
        .split('"')
        .next()
        .unwrap()
        .to_owned();
    let garment = twice(&server, &begin, "begin", &begin, &[("whom", "Ines"), ("use0", &slate)]);
    twice(&server, &garment, "cut", &format!("{garment}/cut"), &[]);
    twice(&server, &garment, "done", &format!("{garment}/done"), &[("wore", "well")]);
    twice(&server, &format!("{cloth}/retire"), "retire", &format!("{cloth}/retire"), &[("note", "used up")]);
}

/// A photograph goes in as a browser without a script sends it, and comes out as a picture.
#[test]
fn a_photograph_is_kept_once() {
    let server = Server::evening();
    let page = server.get("/cloths").text();
    let cloth = page.split("href=\"/cloths/01").nth(1).unwrap().split('"').next().unwrap();
    let target = format!("/cloths/01{cloth}/photos");
    let picture = {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, 64, 48);
        encoder.set_color(png::ColorType::Rgb);
        encoder.write_header().unwrap().write_image_data(&[90; 64 * 48 * 3]).unwrap();
        bytes
    };
    let once = field(&server.get(&target).text(), "photo", "once");
    let mut body = format!("--x\r\nContent-Disposition: form-data; name=\"once\"\r\n\r\n{once}\r\n").into_bytes();
    body.extend(
        b"--x\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.png\"\r\nContent-Type: image/png\r\n\r\n",
    );
    body.extend(&picture);
    body.extend(b"\r\n--x--\r\n");
    let heads =
        format!("Host: {0}\r\nOrigin: http://{0}\r\nContent-Type: multipart/form-data; boundary=x\r\n", server.host);
    let mut counts = Vec::new();
    for _ in 0..2 {
        let answer = server.ask("POST", &target, &heads, &body).unwrap();
        assert_eq!(answer.status, 303, "{}", answer.text());
        counts.push(server.count());
    }
    assert_eq!(counts[0], counts[1]);
    let page = server.get(&target).text();
    let photo = page.split("href=\"/photos/").nth(1).unwrap().split('"').next().unwrap();
    let file = server.get(&format!("/photos/{photo}"));
    // A JPEG begins with FF D8 (ITU-T T.81, Annex B).
    assert_eq!((file.head("content-type"), &file.body[..2]), ("image/jpeg", &[0xff, 0xd8][..]));
}
