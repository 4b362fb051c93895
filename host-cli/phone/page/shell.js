// The first visit: puts the app on this phone, then goes on to its first page.
"use strict";

const tell = (text) => { document.getElementById("state").textContent = text; };

async function start() {
    if (!window.isSecureContext) {
        tell("This address begins with http. A browser keeps an app only from an address that begins with https. Ask whoever gave you this address for one.");
        return;
    }
    if (!("serviceWorker" in navigator)) {
        tell("This browser does not keep apps, perhaps because this is a private window. Open the address in an ordinary window.");
        return;
    }
    try {
        const registration = await navigator.serviceWorker.register("worker.js", { updateViaCache: "none" });
        await active(registration);
        location.replace("./");
    } catch (error) {
        tell(`The app could not be put on this phone. Check that you have a network, then reload this page. The browser says: ${error.message}`);
    }
}

// The worker answers once it is active, and leaves where a file was missing. A hard reload goes past it, so that `ready` alone
// would wait for ever.
function active(registration) {
    const worker = registration.active ?? registration.waiting ?? registration.installing;
    return new Promise((resolve, reject) => {
        const look = () => {
            if (worker.state === "activated") resolve();
            if (worker.state === "redundant") reject(new Error("a file of the app is missing"));
        };
        worker.addEventListener("statechange", look);
        look();
    });
}

start();
