"use strict";
// Makes pages quicker that work without it.
{
    // A search shows its result as soon as a list is changed.
    for (const form of document.querySelectorAll("form#find")) {
        form.addEventListener("change", (event) => {
            if (event.target.matches("select")) form.requestSubmit();
        });
    }
    // Nothing is sent twice by an impatient finger.
    addEventListener("submit", ({ target }) => {
        setTimeout(() => {
            for (const button of target.querySelectorAll("button")) button.disabled = true;
        });
    });
    addEventListener("pageshow", () => {
        for (const button of document.querySelectorAll("button:disabled")) button.disabled = false;
    });
}
