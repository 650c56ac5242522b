/* libharu as this program needs it: with zlib, without its own reading of PNG. As Debian's build otherwise. */
#define LIBHPDF_HAVE_NOPNGLIB
#define HPDF_NOPNGLIB
