// What C++ asks of the page: implemented in bridge.js, which passes each call on to the page's host object. Texts are
// UTF-8 with a zero at the end; those that come back were allocated by malloc and are the caller's. The page's thread,
// or the worker's, where only the blob calls may be used.
#pragma once

#include <cstdint>

extern "C" {

// Blobs: files outside the memory of the program, by their path.
double cotter_js_blob_size(const char* path);                                       // bytes; -1: there is none
int cotter_js_blob_read(const char* path, double offset, void* out, double count);  // 1: all of it was read
char* cotter_js_blob_list(const char* folder);  // names, each with a line end; "" when the folder is empty
int cotter_js_blob_create(const char* path);    // a number for the next two
int cotter_js_blob_write(int writer, const void* bytes, double count);  // 0: there is no room
void cotter_js_blob_close(int writer);
int cotter_js_blob_rename(const char* from, const char* to);  // 0: there is none
int cotter_js_blob_remove(const char* path);

// The device.
void cotter_js_pick(int what);  // of Pick
void cotter_js_hand_out(const char* path);
void cotter_js_confirm();
void cotter_js_keep_awake(int on);
int cotter_js_storage(double* used, double* room);  // 1: it may be cleared
double cotter_js_written();
double cotter_js_kept();
char* cotter_js_trouble();

// The field that is edited, over the canvas.
void cotter_js_field_show(const char* json);
void cotter_js_field_hide();

void cotter_js_wake();                                   // draw again soon
void cotter_js_picture(const char* id, int longest_px);  // answered by cotter_picture
void cotter_js_work(int order, const char* json);        // answered by cotter_work_done
void cotter_js_random(void* out, int count);
}
