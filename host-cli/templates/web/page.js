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
    // Whoever pulls is remembered by the browser that they type into: several people may measure at one server.
    for (const name of document.querySelectorAll("form#begin input[name=by], form#readings input[name=by]")) {
        try {
            if (name.value === "") name.value = localStorage.getItem("tenter-by") ?? "";
            name.form.addEventListener("submit", () => localStorage.setItem("tenter-by", name.value.trim()));
        } catch {
            // A browser that keeps nothing remembers nobody.
        }
    }
    // A clock runs while she holds or waits, and says when to read.
    for (const clock of document.querySelectorAll(".clock")) {
        const due = Number(clock.dataset.due);
        const passed = () => Number(clock.dataset.passed) + performance.now() / 1000;
        const shown = (seconds) => {
            const [minutes, rest] = [Math.floor(seconds / 60), Math.floor(seconds % 60)];
            return minutes === 0 ? `${rest} s` : `${minutes}:${String(rest).padStart(2, "0")} min`;
        };
        let said = clock.classList.contains("due");
        const tick = () => {
            const left = due - passed();
            clock.textContent = left > 0 ? `${shown(passed())} – read it in ${shown(Math.ceil(left))}` : `${shown(passed())} – read it now`;
            if (left > 0 || said) return;
            said = true;
            clock.classList.add("due");
            navigator.vibrate?.([200, 100, 200]);
            beep();
        };
        tick();
        setInterval(tick, 250);
    }
    function beep() {
        const audio = new AudioContext();
        // A browser that has not been touched yet stays silent.
        if (audio.state !== "running") return;
        const [tone, gain] = [audio.createOscillator(), audio.createGain()];
        gain.gain.value = 0.2;
        tone.connect(gain).connect(audio.destination);
        tone.start();
        tone.stop(audio.currentTime + 0.4);
    }
}
