// A browser with a web server beside it, which do what they are told: one command a line, as JSON, one answer a line.
//
//   node phone.mjs MODULES BROWSER
//
// A command names what to do with `do`; the table at the end says what each takes. The answer is {done} or {failed}.

import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { connect } from "node:net";
import { join, normalize } from "node:path";
import { createInterface } from "node:readline";

import { launch as start, press, scheme, timeout, violations, watched } from "./browser.mjs";

const executablePath = process.argv[3];

const KINDS = { html: "text/html", js: "text/javascript", css: "text/css", svg: "image/svg+xml", png: "image/png", webmanifest: "application/manifest+json" };
let served = null;
let requests = [];
let slow = null; // Holds requests for a path until it is let go.

// A static web space, as simple as they come.
function serve({ folder, base = "", port = 0 }) {
    const server = createServer(async (request, response) => {
        const path = decodeURIComponent(new URL(request.url, "http://x").pathname);
        requests.push(path);
        if (slow?.path === path) await slow.gate;
        try {
            const inside = normalize(path.slice(base.length).replace(/\/$/, "/index.html"));
            if (!path.startsWith(`${base}/`) || inside.includes("..")) throw new Error("not here");
            const bytes = await readFile(join(served.folder, inside));
            response.writeHead(200, { "content-type": KINDS[inside.split(".").pop()] ?? "application/octet-stream" });
            response.end(bytes);
        } catch {
            response.writeHead(404).end();
        }
    });
    served = { server, folder };
    return new Promise((resolve) => server.listen(port, "127.0.0.1", () => resolve(server.address().port)));
}

async function unserve() {
    served.server.closeAllConnections();
    await new Promise((resolve) => served.server.close(resolve));
}

let browser = null;
let pages = {};
let scripted = {};
let killed = false;

async function launch({ profile, program = executablePath }) {
    browser = await start(program, { profile, args: ["--allow-file-access-from-files=false"] });
    pages = {};
    scripted = {};
    killed = false;
}

// As the power switch of a phone, without a word to it.
function kill() {
    killed = true;
    process.kill(-browser.process().pid, "SIGKILL");
}

async function gone() {
    const child = browser.process();
    if (child.exitCode === null && child.signalCode === null) await new Promise((resolve) => child.once("exit", resolve));
}

async function open({ page = "a", url, scripts = true, width = 390 }) {
    pages[page] ??= await browser.newPage();
    pages[page].setDefaultTimeout(timeout);
    await pages[page].setViewport({ width, height: 844 });
    // Firefox cannot be told.
    if (scripts !== (scripted[page] ?? true)) await pages[page].setJavaScriptEnabled(scripts);
    scripted[page] = scripts;
    await pages[page].goto(url, { waitUntil: "load" });
    return pages[page].url();
}

// The first visit: until the app's own first page is there.
async function install({ page = "a", url }) {
    await open({ page, url });
    await pages[page].waitForSelector("nav");
    return pages[page].url();
}

async function send({ page = "a", form, fields = {} }) {
    const there = pages[page];
    for (const [name, value] of Object.entries(fields)) {
        const field = `${form} [name="${name}"]`;
        await there.$eval(field, (input) => { input.value = ""; });
        await there.type(field, value);
    }
    await Promise.all([there.waitForNavigation({ waitUntil: "load" }), there.click(`${form} button`)]);
    return there.url();
}

// Adds cloths one after the other, as fast as they are answered, until all are or the browser is killed: at the moment of
// an answer, or some time after the last but `after` was sent. Which were answered.
async function storm({ page = "a", names, script, kill_at: killAt, kill_after_ms: killAfter }) {
    const answered = [];
    const there = pages[page];
    await there.exposeFunction("answered", (name) => {
        answered.push(name);
        if (answered.length === killAt) kill();
    });
    await there.exposeFunction("sending", (place) => {
        if (killAfter !== undefined && place === killAt) setTimeout(kill, killAfter);
    });
    try {
        await there.evaluate(`(async (names) => { for (const [place, name] of names.entries()) {
            await sending(place);
            await (${script})(name);
            await answered(name);
        } })(${JSON.stringify(names)})`);
    } catch (error) {
        if (!killed) throw error;
    }
    if (killed) await gone();
    return answered;
}

// What is wrong with what is seen of a page, as the script tells, and for whom it cannot be used.
async function look({ page = "a", url, width, dark = false, script, axe = false, png }) {
    const there = pages[page];
    await there.setViewport({ width, height: 844 });
    if (dark) await scheme(there, true);
    if (url !== undefined) await there.goto(url, { waitUntil: "load" });
    const wrong = await there.evaluate(script);
    const cannot = axe ? await violations(there) : [];
    if (png !== undefined) await there.screenshot({ path: png, fullPage: true });
    if (dark) await scheme(there, false);
    return { wrong, violations: cannot };
}

// Goes on with the key until what is wanted has the focus.
async function tabTo({ page = "a", selector }) {
    for (let pressed = 0; pressed < 120; pressed += 1) {
        await press(pages[page], ["<Tab>"]);
        if (await pages[page].evaluate((wanted) => document.activeElement.matches(wanted), selector)) return;
    }
    throw new Error(`the key never comes to ${selector}`);
}

// A serial port in place of the browser's own; what is written to it goes to a program that listens on this machine, and back.
let socket = null;
async function serial({ page = "a", port }) {
    socket = connect(port, "127.0.0.1");
    await new Promise((resolve, reject) => socket.once("connect", resolve).once("error", reject));
    const there = pages[page];
    const name = `line${port}`;
    await there.exposeFunction(name, (bytes) => { socket.write(Buffer.from(bytes)); });
    await there.evaluate((write) => {
        const line = { opened: null, closed: false };
        self.line = line;
        navigator.serial.requestPort = async () => ({
            async open(options) {
                line.opened = options;
                this.readable = new ReadableStream({ start(controller) { line.controller = controller; } });
                this.writable = new WritableStream({ write: (bytes) => self[write]([...bytes]) });
            },
            async close() { line.closed = true; },
        });
    }, name);
    socket.on("data", (bytes) => there.evaluate((heard) => self.line.controller.enqueue(new Uint8Array(heard)), [...bytes]).catch(() => {}));
    socket.on("close", () => there.evaluate(() => self.line.controller.close()).catch(() => {}));
}

async function workers() {
    const found = browser.targets().filter((target) => target.type() === "service_worker");
    return Promise.all(found.map((target) => target.worker()));
}

// What the browser is told to pretend lasts as long as the session in which it was told.
const sessions = {};
async function cdp(page, method, parameters) {
    sessions[page] ??= await pages[page].createCDPSession();
    return sessions[page].send(method, parameters);
}

let seen = null;

const commands = {
    serve,
    unserve,
    launch,
    open,
    install,
    send,
    storm,
    look,
    serial,
    unplug: () => { socket.destroy(); },
    tab_to: tabTo,
    keys: async ({ page = "a", keys, goes = false }) => {
        await Promise.all([goes ? pages[page].waitForNavigation({ waitUntil: "load" }) : null, press(pages[page], keys)]);
        return pages[page].url();
    },
    watch: ({ page = "a" }) => { seen = watched(pages[page]); },
    complaints: () => seen.errors,
    kill: async () => { kill(); await gone(); },
    close: async () => { await browser.close(); },
    folder: ({ folder }) => { served.folder = folder; },
    requests: () => requests.splice(0),
    hold: ({ path }) => { slow = { path }; slow.gate = new Promise((resolve) => { slow.go = resolve; }); },
    release: () => slow.go(),
    eval: async ({ page = "a", script }) => (await pages[page].evaluate(script)) ?? null,
    wait: async ({ page = "a", script }) => { await pages[page].waitForFunction(script); },
    popup: async ({ page = "a", as, script }) => {
        const opened = new Promise((resolve) => pages[page].once("popup", resolve));
        await pages[page].evaluate(script);
        pages[as] = await opened;
        pages[as].setDefaultTimeout(timeout);
    },
    shut: async ({ page }) => { await pages[page].close(); delete pages[page]; },
    // In the middle of the window, where nothing that stays in its place covers it.
    click: async ({ page = "a", selector }) => {
        await pages[page].$eval(selector, (element) => element.scrollIntoView({ block: "center" }));
        await pages[page].click(selector);
    },
    upload: async ({ page = "a", selector, file }) => { await (await pages[page].$(selector)).uploadFile(file); },
    photograph: async ({ page = "a", png }) => { await pages[page].screenshot({ path: png, fullPage: true }); },
    in_worker: async ({ script }) => Promise.all((await workers()).map((worker) => worker.evaluate(script))),
    stop_workers: async ({ page = "a" }) => {
        const session = await pages[page].createCDPSession();
        await session.send("ServiceWorker.enable");
        await session.send("ServiceWorker.stopAllWorkers");
        await session.detach();
    },
    quota: ({ page = "a", origin, bytes }) => cdp(page, "Storage.overrideQuotaForOrigin", bytes === undefined ? { origin } : { origin, quotaSize: bytes }),
};

for await (const line of createInterface({ input: process.stdin })) {
    const command = JSON.parse(line);
    let answer;
    try {
        answer = { done: (await commands[command.do](command)) ?? null };
    } catch (error) {
        answer = { failed: String(error.stack ?? error) };
    }
    process.stdout.write(`${JSON.stringify(answer)}\n`);
}
await browser?.close().catch(() => {});
process.exit(0);
