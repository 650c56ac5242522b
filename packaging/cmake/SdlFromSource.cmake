# SDL 2.32.4 as part_sdl for the web; see PartsFromSource.cmake. Its files are compiled directly: asking the compiler what
# it can do takes longer than that.
# Only what a window, input and drawing need: no sound, sensors or force feedback.
set(sdl_sources SDL SDL_assert SDL_dataqueue SDL_error SDL_guid SDL_hints SDL_list SDL_log SDL_utils
  atomic/SDL_atomic atomic/SDL_spinlock cpuinfo/SDL_cpuinfo dynapi/SDL_dynapi
  events/SDL_clipboardevents events/SDL_displayevents events/SDL_dropevents events/SDL_events events/SDL_gesture
  events/SDL_keyboard events/SDL_keysym_to_scancode events/SDL_mouse events/SDL_quit events/SDL_scancode_tables
  events/SDL_touch events/SDL_windowevents events/imKStoUCS
  file/SDL_rwops joystick/SDL_gamecontroller joystick/SDL_joystick joystick/SDL_steam_virtual_gamepad
  joystick/controller_type
  libm/e_atan2 libm/e_exp libm/e_fmod libm/e_log libm/e_log10 libm/e_pow libm/e_rem_pio2 libm/e_sqrt libm/k_cos
  libm/k_rem_pio2 libm/k_sin libm/k_tan libm/s_atan libm/s_copysign libm/s_cos libm/s_fabs libm/s_floor libm/s_scalbn
  libm/s_sin libm/s_tan
  locale/SDL_locale misc/SDL_url power/SDL_power
  render/SDL_render render/SDL_yuv_sw render/software/SDL_blendfillrect render/software/SDL_blendline
  render/software/SDL_blendpoint render/software/SDL_drawline render/software/SDL_drawpoint render/software/SDL_render_sw
  render/software/SDL_rotate render/software/SDL_triangle
  stdlib/SDL_crc16 stdlib/SDL_crc32 stdlib/SDL_getenv stdlib/SDL_iconv stdlib/SDL_malloc stdlib/SDL_mslibc
  stdlib/SDL_qsort stdlib/SDL_stdlib stdlib/SDL_string stdlib/SDL_strtokr
  thread/SDL_thread timer/SDL_timer
  video/SDL_RLEaccel video/SDL_blit video/SDL_blit_0 video/SDL_blit_1 video/SDL_blit_A video/SDL_blit_N
  video/SDL_blit_auto video/SDL_blit_copy video/SDL_blit_slow video/SDL_bmp video/SDL_clipboard video/SDL_egl
  video/SDL_fillrect video/SDL_pixels video/SDL_rect video/SDL_shape video/SDL_stretch video/SDL_surface video/SDL_video
  video/SDL_vulkan_utils video/SDL_yuv video/yuv2rgb/yuv_rgb_std)
if(EMSCRIPTEN)
  list(APPEND sdl_sources filesystem/emscripten/SDL_sysfilesystem joystick/emscripten/SDL_sysjoystick
    loadso/dlopen/SDL_sysloadso locale/emscripten/SDL_syslocale misc/emscripten/SDL_sysurl power/emscripten/SDL_syspower
    render/opengles2/SDL_render_gles2 render/opengles2/SDL_shaders_gles2
    thread/generic/SDL_syscond thread/generic/SDL_sysmutex thread/generic/SDL_syssem thread/generic/SDL_systhread
    thread/generic/SDL_systls timer/unix/SDL_systimer
    video/emscripten/SDL_emscriptenevents video/emscripten/SDL_emscriptenframebuffer video/emscripten/SDL_emscriptenmouse
    video/emscripten/SDL_emscriptenopengles video/emscripten/SDL_emscriptenvideo)
endif()
list(TRANSFORM sdl_sources PREPEND src/)
list(TRANSFORM sdl_sources APPEND .c)
part_from_source(part_sdl sdl-2.32.4 ${sdl_sources} INCLUDE include
  DEFINE SDL_AUDIO_DISABLED=1 SDL_SENSOR_DISABLED=1)
