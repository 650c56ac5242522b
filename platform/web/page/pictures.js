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

// {width, height, rows(from, count): their bytes, 4 a pixel}, or null.
export async function pixels(blobs, id, longest) {
    const blob = blobOf(blobs, id, longest);
    if (!blob) return null;
    try {
        const picture = await createImageBitmap(blob);
        const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
        const width = Math.max(1, Math.round(picture.width * scale));
        const height = Math.max(1, Math.round(picture.height * scale));
        const canvas = new OffscreenCanvas(width, height);
        const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
        context.imageSmoothingQuality = 'high';
        context.drawImage(picture, 0, 0, width, height);
        picture.close();
        return { width, height, rows: (from, count) => context.getImageData(0, from, width, count).data };
    } catch {
        return null;
    }
}
