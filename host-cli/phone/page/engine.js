// The log in the browser's own database, and the program over it. Used by the service worker, and by the page that is one file.
//
// A request is one transaction: what was kept is read, the program answers in the middle of it, what is new is written, and
// the answer is given only after the database says that all of it is on the disk. So a request that fails leaves nothing
// behind, two windows at once never get the same tag, and what was answered survives whatever ends the browser.
"use strict";

// Raised when what is kept is laid out in another way.
const SCHEMA = 1;
const STORES = ["entries", "photos", "drafts", "state"];
// A program that has more photographs than that in memory is made anew.
const MANY_PHOTO_CHARACTERS = 30_000_000;
const TEST = 1;
const OTHER = 2;

class Engine {
    #module; // () => Promise<WebAssembly.Module>
    #name;
    #database = null;
    #program = null;

    constructor(module, name = "tenter") {
        this.#module = module;
        this.#name = name;
    }

    // {post, target, contentType, body, base} → {status, headers, body}
    async answer(asked) {
        const [module, database] = await Promise.all([this.#module(), this.#open()]);
        return new Promise((resolve, reject) => {
            let answered;
            let failure = null;
            // Its promise and not the success of a request tells that all is on the disk, and `strict` that the disk was
            // told to write it.
            const transaction = database.transaction(STORES, "readwrite", { durability: "strict" });
            const stores = Object.fromEntries(STORES.map((name) => [name, transaction.objectStore(name)]));
            transaction.oncomplete = () => {
                if (this.#program !== null && this.#program.photoCharacters > MANY_PHOTO_CHARACTERS) this.#program = null;
                resolve(answered);
            };
            transaction.onabort = () => {
                // The program may hold what was not kept.
                this.#program = null;
                reject(failure ?? transaction.error ?? new Error("the transaction was aborted"));
            };
            const guarded = (step) => (event) => {
                try {
                    step(event?.target?.result);
                } catch (error) {
                    failure = error;
                    transaction.abort();
                }
            };
            const then = (request, step) => {
                request.onsuccess = guarded(step);
            };
            const ask = (waiting, again) => {
                const said = this.#program.answer({ ...asked.head, waiting }, asked.body);
                const changed = said.entries.length + said.photos.length + said.drafts.length + said.handed.length > 0;
                const wants = said.wanted.length > 0 || said.wanted_all;
                if (!wants || again) {
                    if (changed) this.#keep(stores, said, then);
                    answered = { status: said.status, headers: said.headers, body: said.body };
                    return;
                }
                this.#photos(stores.photos, said, then, (lines) => {
                    if (changed && lines.length > 0) {
                        // What it did to its log is not kept, so it begins again from what is.
                        this.#load(stores, module, then, () => {
                            this.#program.take(lines);
                            ask(waiting, true);
                        });
                    } else {
                        this.#program.take(lines);
                        ask(waiting, true);
                    }
                });
            };
            const begin = () => this.#waiting(stores.entries, asked.head.target, then, (waiting) => ask(waiting, false));
            then(stores.state.get("changes"), (changes = 0) => {
                // Another window or another version of the app has written since: read it all again.
                if (this.#program !== null && this.#program.changes === changes) begin();
                else this.#load(stores, module, then, begin);
            });
        });
    }

    #open() {
        this.#database ??= new Promise((resolve, reject) => {
            const opening = indexedDB.open(this.#name, SCHEMA);
            opening.onupgradeneeded = () => {
                const database = opening.result;
                const entries = database.createObjectStore("entries", { autoIncrement: true });
                entries.createIndex("id", "id", { unique: true });
                entries.createIndex("waiting", "waiting");
                for (const name of ["photos", "drafts", "state"]) database.createObjectStore(name);
            };
            opening.onsuccess = () => {
                const database = opening.result;
                const forget = () => {
                    this.#database = null;
                    this.#program = null;
                };
                // A newer version of the app waits for this one to let go.
                database.onversionchange = () => {
                    forget();
                    database.close();
                };
                database.onclose = forget;
                resolve(database);
            };
            opening.onerror = () => {
                this.#database = null;
                reject(opening.error);
            };
        });
        return this.#database;
    }

    // Makes the program anew from what was kept.
    #load(stores, module, then, next) {
        this.#program = null;
        const read = {};
        const done = () => {
            if (Object.keys(read).length < 4) return;
            const program = new Program(module);
            const drafts = read.names.map((draft, place) => JSON.stringify({ draft, text: read.texts[place] }));
            program.take(read.entries.map((entry) => entry.line));
            program.take(drafts);
            program.changes = read.changes;
            this.#program = program;
            next();
        };
        const reading = (name, request) => then(request, (result) => {
            read[name] = result;
            done();
        });
        reading("entries", stores.entries.getAll());
        reading("names", stores.drafts.getAllKeys());
        reading("texts", stores.drafts.getAll());
        then(stores.state.get("changes"), (changes = 0) => {
            read.changes = changes;
            done();
        });
    }

    // What was not handed over yet: how much, and for the pages that hand over also which.
    #waiting(entries, target, then, next) {
        const index = entries.index("waiting");
        if (!target.startsWith("/hand-over")) {
            then(index.count(TEST), (tests) => then(index.count(OTHER), (others) => next({ tests, others })));
            return;
        }
        const ids = (rows) => rows.map((row) => row.id);
        then(index.getAll(TEST), (tests) => then(index.getAll(OTHER), (others) => {
            next({ tests: tests.length, others: others.length, test_ids: ids(tests), other_ids: ids(others) });
        }));
    }

    #photos(photos, said, then, next) {
        if (said.wanted_all) {
            then(photos.getAll(), next);
            return;
        }
        const lines = [];
        let open = said.wanted.length;
        for (const name of said.wanted) {
            then(photos.get(name), (line) => {
                if (line !== undefined) lines.push(line);
                open -= 1;
                if (open === 0) next(lines);
            });
        }
    }

    #keep(stores, said, then) {
        const byId = stores.entries.index("id");
        const rewrite = (id, change) => then(byId.getKey(id), (key) => {
            if (key === undefined) return;
            then(stores.entries.get(key), (row) => stores.entries.put(change(row), key));
        });
        for (const { id, line, test, replaces } of said.entries) {
            if (replaces) {
                rewrite(id, (row) => ({ ...row, line }));
                continue;
            }
            const row = { id, line };
            if (!said.foreign) row.waiting = test ? TEST : OTHER;
            stores.entries.add(row);
        }
        for (const id of said.handed) rewrite(id, (row) => ({ id: row.id, line: row.line }));
        for (const { name, line } of said.photos) stores.photos.put(line, name);
        for (const { draft, text } of said.drafts) {
            if (text === null) stores.drafts.delete(draft);
            else stores.drafts.put(text, draft);
        }
        this.#program.changes += 1;
        stores.state.put(this.#program.changes, "changes");
    }
}

// The program with its log in memory.
class Program {
    changes = 0;
    photoCharacters = 0;
    #exports;

    constructor(module) {
        const chance = new BigUint64Array(1);
        const here = {
            now: () => Date.now(),
            chance: () => crypto.getRandomValues(chance)[0],
            offset: (ms) => -60 * new Date(ms).getTimezoneOffset(),
        };
        this.#exports = new WebAssembly.Instance(module, { here }).exports;
    }

    // Lines that were kept.
    take(lines) {
        if (lines.length === 0) return;
        const text = lines.join("\n");
        if (lines[0].startsWith('{"photo"')) this.photoCharacters += text.length;
        this.#write(new TextEncoder().encode(text));
        const unread = this.#exports.take();
        if (unread > 0) throw new Error(`${unread} entries that were kept cannot be read`);
    }

    answer(head, body) {
        const words = new TextEncoder().encode(JSON.stringify(head));
        const message = new Uint8Array(4 + words.length + body.byteLength);
        new DataView(message.buffer).setUint32(0, words.length, true);
        message.set(words, 4);
        message.set(new Uint8Array(body), 4 + words.length);
        this.#write(message);
        const start = this.#exports.answer();
        const said = new Uint8Array(this.#exports.memory.buffer, start, this.#exports.said());
        const length = new DataView(said.buffer, start).getUint32(0, true);
        const answered = JSON.parse(new TextDecoder().decode(said.subarray(4, 4 + length)));
        // A copy, for memory is written over by the next.
        return { ...answered, body: said.slice(4 + length) };
    }

    #write(bytes) {
        // Memory may grow, and then what was seen of it before is gone.
        const start = this.#exports.room(bytes.length);
        new Uint8Array(this.#exports.memory.buffer, start, bytes.length).set(bytes);
    }
}

// What went wrong, for a person: a status, and what to do.
function explained(error) {
    switch (error?.name) {
        case "QuotaExceededError":
            return [507, "This phone has no room left", "Nothing of your last step was stored. Everything before it still is. Hand over to the desk, make room on the phone, then go back and send it again."];
        case "VersionError":
            return [503, "This page is older than the app", "The app was renewed while this page was open. Nothing of your last step was stored. Close every other window of the app, reload this page, then send it again."];
        case "InvalidStateError":
        case "AbortError":
            return [503, "The app is being renewed", "Nothing of your last step was stored. Go back and send it again."];
        default:
            return [500, "That did not work", `Nothing of your last step was stored. Everything before it still is. Go back and try once more. The browser says: ${error}`];
    }
}

function errorPage([, title, words], base) {
    const escaped = (text) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
    return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><title>${escaped(title)}</title></head>
<body style="font:1.1rem/1.5 system-ui,sans-serif;max-width:40rem;margin:2rem auto;padding:0 1rem"><main role="alert">
<h1>${escaped(title)}</h1><p>${escaped(words)}</p><p><a href="${base}/">To the first page</a></p></main></body></html>`;
}
