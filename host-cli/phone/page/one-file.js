// The app as one file: shows each page in a frame, and answers what is pressed and sent there itself. The address stands
// behind the `#` of the file's own, so that the browser's way back works.
"use strict";

{
    const byId = (id) => document.getElementById(id);
    const frame = byId("page");
    const scripts = { "/app/page.js": byId("page-script").textContent, "/app/hand-over.js": byId("hand-over-script").textContent };

    const packed = Uint8Array.from(atob(byId("module").textContent), (letter) => letter.charCodeAt(0));
    const unpacked = new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip")));
    const module = unpacked.arrayBuffer().then((bytes) => WebAssembly.compile(bytes));
    const engine = new Engine(() => module);

    const here = () => decodeURI(location.hash.slice(1)) || "/";

    async function ask(target, post = false, contentType = "", body = new ArrayBuffer(0)) {
        try {
            return await engine.answer({ head: { post, target, content_type: contentType, base: "" }, body });
        } catch (error) {
            console.warn(error);
            const why = explained(error);
            return { status: why[0], headers: [["content-type", "text/html"]], body: new TextEncoder().encode(errorPage(why, "")) };
        }
    }

    const head = (answered, wanted) => answered.headers.find(([name]) => name === wanted)?.[1] ?? "";
    const text = (answered) => new TextDecoder().decode(answered.body);

    async function go(target, post, contentType, body) {
        const answered = await ask(target.split("#")[0], post, contentType, body);
        const location_ = head(answered, "location");
        if (location_ !== "") {
            await turnTo(location_);
        } else if (head(answered, "content-disposition").startsWith("attachment")) {
            save(answered);
        } else if (head(answered, "content-type").startsWith("text/html")) {
            await show(text(answered));
        } else {
            save(answered);
        }
    }

    // To another page, so that the way back leads here.
    async function turnTo(target) {
        if (here() === target) await go(target);
        else location.hash = encodeURI(target);
    }

    function save(answered) {
        const link = document.createElement("a");
        link.href = URL.createObjectURL(new Blob([answered.body], { type: head(answered, "content-type") }));
        link.download = /filename="([^"]*)"/.exec(head(answered, "content-disposition"))?.[1] ?? "tenter";
        link.click();
    }

    // A page with all that it would fetch put into it.
    async function whole(html) {
        const page = new DOMParser().parseFromString(html, "text/html");
        const secret = String(crypto.getRandomValues(new Uint32Array(4)).join("-"));
        const inside = (address) => address?.startsWith("/") && !address.startsWith("//");
        for (const link of page.querySelectorAll("link")) {
            if (link.rel === "stylesheet" && inside(link.getAttribute("href"))) {
                const style = page.createElement("style");
                style.textContent = text(await ask(link.getAttribute("href")));
                link.replaceWith(style);
            } else {
                link.remove();
            }
        }
        for (const script of page.querySelectorAll("script[src]")) {
            const address = script.getAttribute("src");
            const inline = page.createElement("script");
            inline.textContent = scripts[address] ?? text(await ask(address));
            inline.setAttribute("nonce", secret);
            script.remove();
            page.body.append(inline);
        }
        for (const image of page.querySelectorAll("img")) {
            if (!inside(image.getAttribute("src"))) continue;
            const answered = await ask(image.getAttribute("src"));
            const bytes = Array.from(answered.body, (byte) => String.fromCharCode(byte)).join("");
            image.src = `data:${head(answered, "content-type")};base64,${btoa(bytes)}`;
        }
        const policy = page.createElement("meta");
        policy.httpEquiv = "Content-Security-Policy";
        policy.content = `default-src 'none'; style-src 'unsafe-inline'; img-src data: blob:; script-src 'nonce-${secret}'; form-action 'none'; base-uri 'none'`;
        page.head.prepend(policy);
        return `<!DOCTYPE html>\n${page.documentElement.outerHTML}`;
    }

    async function show(html) {
        const srcdoc = await whole(html);
        await new Promise((resolve) => {
            frame.onload = resolve;
            frame.srcdoc = srcdoc;
            frame.hidden = false;
        });
        byId("state").hidden = true;
        const page = frame.contentDocument;
        document.title = page.title;
        // What a script of a page asks for, it asks here.
        frame.contentWindow.fetch = async (target, { method = "GET", body = "", headers = {} } = {}) => {
            const sent = await new Response(body).arrayBuffer();
            const answered = await ask(new URL(target, `https://app${here()}`).pathname, method === "POST", headers["content-type"], sent);
            return new Response(answered.body, { status: answered.status, headers: answered.headers });
        };
        page.addEventListener("click", clicked);
        page.addEventListener("submit", sent);
        const [, fragment] = here().split("#");
        if (fragment !== undefined) page.getElementById(fragment)?.scrollIntoView();
    }

    function clicked(event) {
        const link = event.target.closest?.("a[href]");
        const address = link?.getAttribute("href");
        if (!address?.startsWith("/") || event.defaultPrevented) return;
        event.preventDefault();
        turnTo(address);
    }

    async function sent(event) {
        if (event.defaultPrevented) return;
        event.preventDefault();
        const form = event.target;
        const button = event.submitter;
        const address = button?.getAttribute("formaction") || form.getAttribute("action") || here();
        const fields = new FormData(form, button);
        if ((form.getAttribute("method") ?? "get").toLowerCase() === "get") {
            await turnTo(`${address.split("?")[0]}?${new URLSearchParams(fields)}`);
            return;
        }
        const multipart = form.enctype === "multipart/form-data";
        const request = new Response(multipart ? fields : new URLSearchParams(fields));
        await go(address, true, request.headers.get("content-type"), await request.arrayBuffer());
    }

    window.addEventListener("hashchange", () => go(here()));
    go(here());
}
