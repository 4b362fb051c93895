"use strict";
// Search and filters. Without a script the book is whole, only longer.
{
    const form = document.querySelector(".finder");
    const found = form.querySelector("output");
    // Upper case and accents make no difference.
    const folded = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
    const rows = new Map([...document.querySelectorAll("tr[data-of]")].map((row) => [row.dataset.of, row]));
    const cloths = [...document.querySelectorAll("article")].map((article) => ({
        places: [article, rows.get(article.id)],
        words: folded(article.querySelector("header").textContent),
        ...article.dataset,
    }));
    const atLeast = (seen, wanted) => wanted === "" || (seen !== "" && Number(seen) >= Number(wanted));
    const find = () => {
        const asked = Object.fromEntries(new FormData(form));
        const words = folded(asked.words).split(/\s+/).filter((word) => word !== "");
        let count = 0;
        for (const cloth of cloths) {
            const fits = words.every((word) => cloth.words.includes(word))
                && (asked.made === "" || cloth.made === asked.made)
                && (asked.lies === "" || cloth.lies === asked.lies)
                && atLeast(cloth.across, asked.across) && atLeast(cloth.along, asked.along)
                && (!asked.answer || cloth.answers.split(" ")[asked.role] === asked.answer);
            cloth.places.forEach((place) => { place.hidden = !fits; });
            count += fits ? 1 : 0;
        }
        found.value = count === cloths.length ? `${count} cloths` : `${count} of ${cloths.length} cloths`;
    };
    form.addEventListener("input", find);
    form.addEventListener("submit", (event) => event.preventDefault());
    form.querySelector("button").addEventListener("click", () => {
        form.reset();
        find();
    });
    form.hidden = false;
    find();
}
