// Photos as pixels, decoded by the browser beside the page: the thumbnail or the preview of the photo, as small as it is
// wanted.

const kThumbnail = 256;

function blobOf(blobs, id, longest) {
    const folder = id.slice(0, 2);
    const kinds = longest <= kThumbnail ? ['thumbs', 'previews'] : ['previews'];
    for (const kind of kinds) {
        const blob = blobs.get(`/book/${kind}/${folder}/${id}.jpg`);
        if (blob) return blob;
    }
    return blobs.get(`/book/photos/${folder}/${id}.jpg`) ?? blobs.get(`/book/photos/${folder}/${id}.png`);
}

// {width, height, rows(from): the bytes of kRows rows or what is left, 4 a pixel; close()}, or null. Decoded beside
// the page; what the page has to do comes in parts, so that it is not blocked for long.
export const kRows = 256;

export async function pixels(blobs, id, longest) {
    const blob = blobOf(blobs, id, longest);
    if (!blob) return null;
    try {
        const picture = await createImageBitmap(blob);
        const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
        const width = Math.max(1, Math.round(picture.width * scale));
        const height = Math.max(1, Math.round(picture.height * scale));
        const context = new OffscreenCanvas(width, kRows).getContext('2d', { alpha: false, willReadFrequently: true });
        context.imageSmoothingQuality = 'medium';
        const rows = (from) => {
            context.drawImage(picture, 0, -from, width, height);
            return context.getImageData(0, 0, width, Math.min(kRows, height - from)).data;
        };
        return { width, height, rows, close: () => picture.close() };
    } catch {
        return null;
    }
}
