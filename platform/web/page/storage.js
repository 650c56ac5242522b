// What the browser says of the room that the app has, as far as it does: {used, room: bytes, mayBeCleared}.
export async function storageFacts() {
    if (!navigator.storage?.persisted) return {};
    const [persisted, estimate] = await Promise.all([navigator.storage.persisted(), navigator.storage.estimate()]);
    return { mayBeCleared: !persisted, used: estimate.usage ?? 0, room: estimate.quota ?? 0 };
}
