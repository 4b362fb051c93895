// Photographs are made small in the browser before they are sent.
"use strict";

// A photograph is read, turned as the camera says and made small here, so that the program need not know how.
async function shrunk(picture, side) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext("2d");
    pen.fillStyle = "white";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.imageSmoothingQuality = "high";
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return canvas;
}

// The most bytes that are kept; a picture of noise needs a lower quality.
async function jpeg(canvas, most) {
    for (const quality of [0.82, 0.7, 0.55, 0.4]) {
        const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
        if (blob.size <= most) return bare(new Uint8Array(await blob.arrayBuffer()));
    }
    throw new Error("too many details");
}

// Without the segments that a decoder does not need, such as the colour profile that browsers add: it is that of the web.
function bare(jpeg) {
    const parts = [jpeg.subarray(0, 2)];
    let at = 2;
    while (jpeg[at + 1] !== 0xda) {
        const [marker, end] = [jpeg[at + 1], at + 2 + jpeg[at + 2] * 256 + jpeg[at + 3]];
        if (marker < 0xe1 || (marker > 0xef && marker !== 0xfe)) parts.push(jpeg.subarray(at, end));
        at = end;
    }
    return new Blob([...parts, jpeg.subarray(at)], { type: "image/jpeg" });
}

// The mean colour of the middle.
function colour(canvas) {
    const [width, height] = [Math.max(1, canvas.width >> 1), Math.max(1, canvas.height >> 1)];
    const { data } = canvas.getContext("2d").getImageData(canvas.width >> 2, canvas.height >> 2, width, height);
    const sums = [0, 0, 0];
    for (let at = 0; at < data.length; at += 1) if (at % 4 < 3) sums[at % 4] += data[at];
    return `#${sums.map((sum) => Math.round(sum / (data.length / 4)).toString(16).padStart(2, "0")).join("")}`;
}

document.addEventListener("submit", async (event) => {
    const form = event.target;
    const [file] = form.querySelector('input[type="file"][name="photo"]')?.files ?? [];
    if (file === undefined || form.dataset.ready === "yes") return;
    event.preventDefault();
    event.stopPropagation();
    try {
        const whole = await shrunk(await createImageBitmap(file, { imageOrientation: "from-image" }), 1200);
        const small = await shrunk(whole, 320);
        const files = { photo: await jpeg(whole, 400_000), thumbnail: await jpeg(small, 40_000) };
        for (const [name, blob] of Object.entries(files)) {
            const field = form.elements.namedItem(name) ?? form.appendChild(Object.assign(document.createElement("input"), { type: "file", name, hidden: true }));
            const carrier = new DataTransfer();
            carrier.items.add(new File([blob], name === "photo" ? file.name : "thumbnail.jpg", { type: "image/jpeg" }));
            field.files = carrier.files;
        }
        const told = form.elements.namedItem("colour") ?? form.appendChild(Object.assign(document.createElement("input"), { type: "hidden", name: "colour" }));
        told.value = colour(small);
        form.dataset.ready = "yes";
    } catch {
        // What the browser cannot read, the program refuses with its own words.
        form.dataset.ready = "yes";
    }
    form.requestSubmit();
});
