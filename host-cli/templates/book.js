"use strict";
// Search and filters; and of a large book only as much as is looked at. Without a script the book is whole, only longer.
{
    const STEP = 60;
    const form = document.querySelector(".finder");
    const found = form.querySelector("output");
    const more = document.querySelector(".more");
    // Upper case and accents make no difference.
    const folded = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
    const rows = new Map([...document.querySelectorAll("tr[data-of]")].map((row) => [row.dataset.of, row]));
    const cloths = [...document.querySelectorAll("article")].map((article) => ({
        article,
        row: rows.get(article.id),
        words: folded(article.querySelector("header").textContent),
        ...article.dataset,
    }));
    let matching = cloths;
    let shown = 0;

    const show = (count) => {
        matching.slice(shown, count).forEach(({ article }) => article.classList.add("shown"));
        shown = Math.min(Math.max(shown, count), matching.length);
        more.hidden = shown === matching.length;
    };
    // A number is a whole one: 7 is the tag, not a part of 78 or of 0.70.
    const finds = (word) => {
        if (!/^\d+$/.test(word)) return (words) => words.includes(word);
        const number = new RegExp(`(^|[^\\d.,])${word}(?![.,]?\\d)`);
        return (words) => number.test(words);
    };
    const atLeast = (seen, wanted) => wanted === "" || (seen !== "" && Number(seen) >= Number(wanted));
    const find = () => {
        const asked = Object.fromEntries(new FormData(form));
        // Whoever looks for something wants to see it, not the maps above it.
        const { role, ...filters } = asked;
        document.documentElement.classList.toggle("finding", Object.values(filters).some((value) => value !== ""));
        const words = folded(asked.words).split(/\s+/).filter((word) => word !== "").map(finds);
        const fits = (cloth) => words.every((is) => is(cloth.words))
            && (asked.made === "" || cloth.made === asked.made)
            && (asked.lies === "" || cloth.lies === asked.lies)
            && atLeast(cloth.across, asked.across) && atLeast(cloth.along, asked.along)
            && (!asked.answer || cloth.answers.split(" ")[asked.role] === asked.answer);
        cloths.forEach(({ article }) => article.classList.remove("shown"));
        matching = cloths.filter(fits);
        const kept = new Set(matching);
        cloths.forEach((cloth) => { cloth.row.hidden = !kept.has(cloth); });
        shown = 0;
        show(STEP);
        const [count, all] = [matching.length, cloths.length];
        const noun = all === 1 ? "cloth" : "cloths";
        found.value = count === all ? `${all} ${noun}` : `${count} of ${all} ${noun}`;
    };
    // A link to a cloth that is not shown yet.
    const follow = () => {
        const article = document.getElementById(location.hash.slice(1));
        const place = cloths.findIndex((cloth) => cloth.article === article);
        if (place < 0) return;
        if (!matching.includes(cloths[place])) {
            form.reset();
            find();
        }
        show(matching.indexOf(cloths[place]) + 1);
        article.scrollIntoView();
    };
    form.addEventListener("input", find);
    form.addEventListener("submit", (event) => event.preventDefault());
    form.querySelector("button").addEventListener("click", () => {
        form.reset();
        find();
    });
    more.addEventListener("click", () => show(shown + STEP));
    const near = new IntersectionObserver((seen) => {
        if (!seen.at(-1).isIntersecting) return;
        show(shown + STEP);
        // Told again, should that not have been enough.
        near.unobserve(more);
        near.observe(more);
    }, { rootMargin: "1000px" });
    near.observe(more);
    addEventListener("hashchange", follow);
    addEventListener("beforeprint", () => show(matching.length));
    form.hidden = false;
    find();
    follow();
}
