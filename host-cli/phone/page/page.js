// On every page of the app: asks the browser to keep what is stored, and looks for a newer version.
"use strict";

// Once something was stored the browser has a reason to say yes, and some ask the person.
document.addEventListener("submit", () => { navigator.storage?.persist?.(); });
navigator.storage?.persisted?.().then((kept) => kept || navigator.storage.persist());
navigator.serviceWorker?.ready.then((registration) => navigator.onLine && registration.update().catch(() => {}));
