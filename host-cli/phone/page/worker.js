// Stands between the pages and the network: what the app itself needs comes from what was fetched when it was installed, every
// other address below its folder is answered by the program. Nothing is fetched later.

// Every file with its SHA-256; written in when the app is made.
const FILES = {};
// The program as it is fetched, packed, and under what name it is kept, unpacked.
const PACKED = "/app/tenter.bin";
const MODULE = "/app/tenter.wasm";
const BASE = new URL(registration.scope).pathname.replace(/\/$/, "");
const CACHE = `tenter ${BASE} ${Object.values(FILES).join(" ")}`;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));

// All or none: where a file is missing or is not the one that belongs to this version, the older version goes on.
async function install() {
    const cache = await caches.open(CACHE);
    const fetched = Object.entries(FILES).map(async ([path, integrity]) => {
        const response = await fetch(BASE + path, { integrity, cache: "no-cache" });
        if (!response.ok) throw new Error(`${path}: ${response.status}`);
        return [path, response];
    });
    for (const [path, response] of await Promise.all(fetched)) {
        if (path !== PACKED) await cache.put(BASE + path, response);
        else await cache.put(BASE + MODULE, new Response(response.body.pipeThrough(new DecompressionStream("gzip"))));
    }
    await self.skipWaiting();
}

async function activate() {
    const mine = (name) => name.startsWith(`tenter ${BASE} `);
    const old = (await caches.keys()).filter((name) => mine(name) && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
}

let module = null;
function compiled() {
    module ??= (async () => {
        const cached = await (await caches.open(CACHE)).match(BASE + MODULE);
        return WebAssembly.compile(await cached.arrayBuffer());
    })();
    module.catch(() => { module = null; });
    return module;
}

const engine = new Engine(compiled);

self.addEventListener("fetch", (event) => {
    const url = new URL(event.request.url);
    if (url.origin !== location.origin || !`${url.pathname}/`.startsWith(`${BASE}/`)) return;
    const path = url.pathname.slice(BASE.length);
    event.respondWith(path in FILES || path === "/worker.js" ? file(path, event.request) : page(path + url.search, event.request));
});

async function file(path, request) {
    return (await (await caches.open(CACHE)).match(BASE + path)) ?? fetch(request);
}

// Pages of ours tell where a form comes from; another origin's cannot pretend that.
function isOurs(request) {
    return request.referrer !== "" && new URL(request.referrer).origin === location.origin;
}

async function page(target, request) {
    const post = request.method === "POST";
    if (!post && request.method !== "GET" && request.method !== "HEAD") return new Response(null, { status: 405 });
    if (post && !isOurs(request)) return refused([403, "That came from another page", "Nothing was stored. Open the app itself and send it from there."]);
    try {
        const body = post ? await request.arrayBuffer() : new ArrayBuffer(0);
        const contentType = request.headers.get("content-type") ?? "";
        const head = { post, target: target || "/", content_type: contentType, base: BASE };
        const { status, headers, body: said } = await engine.answer({ head, body });
        return new Response(status === 303 ? null : said, { status, headers });
    } catch (error) {
        console.warn(error);
        return refused(explained(error));
    }
}

function refused(why) {
    const headers = { "content-type": "text/html; charset=utf-8", "cache-control": "no-store" };
    return new Response(errorPage(why, BASE), { status: why[0], headers });
}
