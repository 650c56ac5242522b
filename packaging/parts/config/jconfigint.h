/* What libjpeg-turbo asks of the compiler: gcc or clang, 32 or 64 bits. */
#define BUILD "cotter"
#undef inline
#define INLINE __inline__ __attribute__((always_inline))
#define THREAD_LOCAL __thread
#define PACKAGE_NAME "libjpeg-turbo"
#define VERSION "2.1.5"
#define SIZEOF_SIZE_T __SIZEOF_SIZE_T__
#if __SIZEOF_LONG__ == __SIZEOF_SIZE_T__
#define HAVE_BUILTIN_CTZL
#endif
#if defined(__has_attribute)
#if __has_attribute(fallthrough)
#define FALLTHROUGH __attribute__((fallthrough));
#endif
#endif
#ifndef FALLTHROUGH
#define FALLTHROUGH
#endif
