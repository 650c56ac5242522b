// The calls of bridge.h, each passed on to Module.host: main.js makes it for the page, worker.js for the worker.
addToLibrary({
    $cotterText: (text) => stringToNewUTF8(text),
    $cotterText__deps: ['$stringToNewUTF8'],

    cotter_js_blob_size: (path) => Module.host.blobs.size(UTF8ToString(path)),
    cotter_js_blob_read: (path, offset, out, count) => {
        const bytes = Module.host.blobs.read(UTF8ToString(path), offset, count);
        if (bytes === null || bytes.length !== count) return 0;
        HEAPU8.set(bytes, out);
        return 1;
    },
    cotter_js_blob_list__deps: ['$cotterText'],
    cotter_js_blob_list: (folder) => cotterText(Module.host.blobs.list(UTF8ToString(folder)).map((n) => n + '\n').join('')),
    cotter_js_blob_create: (path) => Module.host.blobs.create(UTF8ToString(path)),
    cotter_js_blob_write: (writer, bytes, count) => Module.host.blobs.write(writer, HEAPU8.slice(bytes, bytes + count)),
    cotter_js_blob_close: (writer) => Module.host.blobs.close(writer),
    cotter_js_blob_rename: (from, to) => Module.host.blobs.rename(UTF8ToString(from), UTF8ToString(to)),
    cotter_js_blob_remove: (path) => Module.host.blobs.remove(UTF8ToString(path)),

    // In place of Emscripten's own: the files that come with the program stay in the package they are brought in, and are
    // read there. Made one by one in the file system they would take a twentieth of a start.
    $FS_createPath: () => {},
    $FS_createDataFile: (path, name, bytes) => Module.host.blobs.lay(path, bytes),

    cotter_js_pick: (what) => Module.host.pick(['camera', 'photos', 'table'][what]),
    cotter_js_hand_out: (path) => Module.host.handOut(UTF8ToString(path)),
    cotter_js_confirm: () => Module.host.confirm(),
    cotter_js_keep_awake: (on) => Module.host.keepAwake(on !== 0),
    cotter_js_storage: (used, room) => {
        const facts = Module.host.storage();
        HEAPF64[used >> 3] = facts.used;
        HEAPF64[room >> 3] = facts.room;
        return facts.mayBeCleared ? 1 : 0;
    },
    cotter_js_written: () => Module.host.written(),
    cotter_js_kept: () => Module.host.kept(),
    cotter_js_trouble__deps: ['$cotterText'],
    cotter_js_trouble: () => cotterText(Module.host.trouble()),

    cotter_js_field_show: (json) => Module.host.fieldShow(JSON.parse(UTF8ToString(json))),
    cotter_js_field_hide: () => Module.host.fieldHide(),

    cotter_js_wake: () => Module.host.wake(),
    cotter_js_picture: (id, longest) => Module.host.picture(UTF8ToString(id), longest),
    cotter_js_work: (order, json) => Module.host.work(order, UTF8ToString(json)),
    cotter_js_random: (out, count) => crypto.getRandomValues(HEAPU8.subarray(out, out + count)),

    // In place of Emscripten's own: a canvas that is given its size, even the same one, makes a new drawing buffer. SDL's
    // 1 x 1 only asks whether the page's style rules the size, and it does.
    emscripten_set_canvas_element_size__deps: ['$findCanvasEventTarget'],
    emscripten_set_canvas_element_size: (target, width, height) => {
        const canvas = findCanvasEventTarget(target);
        if (!canvas) return -4; // EMSCRIPTEN_RESULT_UNKNOWN_TARGET
        if (width === 1 || (canvas.width === width && canvas.height === height)) return 0;
        canvas.width = width;
        canvas.height = height;
        return 0;
    },

    // No extension is enabled, so none is named; listing them waits for the graphics.
    glGetString__deps: ['$stringToNewUTF8'],
    glGetString: (name) => stringToNewUTF8(name === 0x1F02 /* GL_VERSION */ ? 'OpenGL ES 2.0 (WebGL)' : ''),

    // Nor is each shader waited for: one that does not compile is found when its program is linked.
    glGetShaderiv__deps: ['$GL'],
    glGetShaderiv: (shader, name, out) => {
        const compiled = 0x8B81; // GL_COMPILE_STATUS
        HEAP32[out >> 2] = name === compiled ? 1 : GLctx.getShaderParameter(GL.shaders[shader], name);
    },
});

// SDL asks for the browser's events, which reach the program through screen.js.
addToLibrary(Object.fromEntries(['beforeunload', 'blur', 'focus', 'fullscreenchange', 'keydown', 'keypress', 'keyup', 'mousedown',
    'mouseenter', 'mouseleave', 'mousemove', 'mouseup', 'pointerlockchange', 'resize', 'touchcancel', 'touchend', 'touchmove',
    'touchstart', 'visibilitychange', 'wheel'].map((event) => [`emscripten_set_${event}_callback_on_thread`, () => 0])));
