// Hands over to the page of a desk that opened this one, and takes in what it sends; or takes in a file.
//
// What is said to and fro, each an object with `tenter`:
//   the app      {tenter: "here"}                      to whoever opened it; it holds nothing, so anybody may hear it
//   the desk     {tenter: "desk"}                      its origin is what the person is asked about
//   the app      {tenter: "take", log}                 after the person said yes, to that origin alone: what the desk lacks
//   the desk     {tenter: "taken", log}                what it has now, the entries of the app among them
//                {tenter: "refused", reason}
"use strict";

const desk = window.opener;
let origin = null;
let agreed = false;

const byId = (id) => document.getElementById(id);

async function takeIn(log) {
    const response = await fetch("hand-over", { method: "POST", body: log, headers: { "content-type": "text/plain" } });
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    byId("asking").textContent = page.getElementById("done")?.textContent ?? page.querySelector("main").textContent;
    byId("live").hidden = false;
    byId("waits").textContent = page.getElementById("waits")?.textContent ?? byId("waits").textContent;
    const sign = page.querySelector(".waiting");
    if (sign === null) document.querySelector(".waiting")?.remove();
    byId("yes").hidden = byId("no").hidden = true;
}

window.addEventListener("message", async ({ source, origin: from, data }) => {
    if (desk === null || source !== desk || typeof data?.tenter !== "string") return;
    if (data.tenter === "desk" && origin === null) {
        origin = from;
        byId("asking").textContent = `The desk at ${from} wants to exchange entries with this phone. It gets what it does not have yet, and sends what it has.`;
        byId("live").hidden = false;
        byId("yes").focus();
    }
    if (from !== origin || !agreed) return;
    if (data.tenter === "taken" && typeof data.log === "string") await takeIn(data.log);
    if (data.tenter === "refused") byId("asking").textContent = `The desk did not take it: ${data.reason}`;
});

byId("yes").addEventListener("click", async () => {
    agreed = true;
    byId("yes").disabled = true;
    const log = await (await fetch("hand-over/tenter-log.txt")).text();
    byId("asking").textContent = "The desk is taking it in.";
    desk.postMessage({ tenter: "take", log }, origin);
});

byId("no").addEventListener("click", () => {
    byId("live").hidden = true;
    origin = "none";
});

// The handheld: this moves bytes between it and the program, which knows what they mean.
const PATIENCE_MS = 1000;
const BAUD = 115200;

async function tell(target, body) {
    const response = await fetch(target, { method: "POST", body, headers: { "content-type": "application/octet-stream" } });
    return { status: response.status, isBytes: response.headers.get("content-type") === "application/octet-stream", response };
}

async function converse(port) {
    const [reader, writer] = [port.readable.getReader(), port.writable.getWriter()];
    let reading = reader.read();
    // What comes within the time, or nothing.
    const heard = async () => {
        let clock;
        const late = new Promise((resolve) => { clock = setTimeout(resolve, PATIENCE_MS, null); });
        const got = await Promise.race([reading, late]);
        clearTimeout(clock);
        if (got === null) return new Uint8Array(0);
        if (got.done) throw new Error("the line is closed");
        reading = reader.read();
        return got.value;
    };
    try {
        let said = await tell("handheld/begin", new Uint8Array(0));
        while (said.isBytes || said.status === 202 || said.status === 409) {
            if (said.isBytes) await writer.write(new Uint8Array(await said.response.arrayBuffer()));
            // The program was made anew meanwhile, as it is when another window stores something.
            said = said.status === 409 ? await tell("handheld/begin", new Uint8Array(0)) : await tell("handheld", await heard());
        }
        return await said.response.text();
    } finally {
        await reader.cancel().catch(() => {});
        reader.releaseLock();
        writer.releaseLock();
    }
}

if (navigator.serial !== undefined) {
    byId("handheld").hidden = false;
    byId("fetch").addEventListener("click", async () => {
        const told = byId("fetched");
        byId("fetch").disabled = true;
        try {
            const port = await navigator.serial.requestPort();
            told.textContent = "The handheld is being read.";
            await port.open({ baudRate: BAUD });
            try {
                told.textContent = await converse(port);
            } finally {
                await port.close();
            }
        } catch (error) {
            told.textContent = error.name === "NotFoundError" ? "No port was chosen." : `The line to the handheld broke. What was stored is safe. Plug it in and fetch again. The browser says: ${error.message}`;
        }
        byId("fetch").disabled = false;
    });
}

byId("bring").addEventListener("submit", async (event) => {
    event.preventDefault();
    event.stopPropagation();
    const [file] = byId("file").files;
    if (file !== undefined) await takeIn(await file.text());
});

if (desk !== null) desk.postMessage({ tenter: "here" }, "*");
