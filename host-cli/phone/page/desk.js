// At the desk: opens the app on this phone and exchanges entries with it. See hand-over.js for what is said.
"use strict";

{
    const form = document.getElementById("app");
    const told = document.getElementById("told");
    const address = form.elements.namedItem("address");
    let app = null;
    let origin = null;

    address.value ||= localStorage.getItem("app") ?? "";

    form.addEventListener("submit", (event) => {
        event.preventDefault();
        event.stopPropagation();
        const typed = address.value.trim();
        if (!URL.canParse(typed)) {
            told.textContent = "Type the whole address of the app. It begins with https.";
            return;
        }
        localStorage.setItem("app", typed);
        const url = new URL(typed);
        const folder = url.pathname.replace(/\/(index\.html)?$/, "");
        origin = url.origin;
        app = window.open(`${origin}${folder}/hand-over`, "tenter app");
        told.textContent = app === null ? "The browser did not open the app. Allow this page to open windows." : "Answer in the app.";
    });

    window.addEventListener("message", async ({ source, origin: from, data }) => {
        if (app === null || source !== app || from !== origin || typeof data?.tenter !== "string") return;
        if (data.tenter === "here") app.postMessage({ tenter: "desk" }, origin);
        if (data.tenter !== "take" || typeof data.log !== "string") return;
        try {
            const taken = await fetch("/exchange", { method: "POST", body: data.log, headers: { "content-type": "text/plain" } });
            if (!taken.ok) throw new Error(await taken.text());
            const log = await (await fetch("/exchange/tenter-log.txt")).text();
            app.postMessage({ tenter: "taken", log }, origin);
            told.textContent = "The desk has what the phone had, and the phone gets what the desk has.";
        } catch (error) {
            app.postMessage({ tenter: "refused", reason: error.message }, origin);
            told.textContent = `Nothing was taken in: ${error.message}`;
        }
    });
}
