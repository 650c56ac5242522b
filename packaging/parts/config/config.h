/* What autoconf would have found out, for the parts that are compiled by packaging/cmake/PartsFromSource.cmake: libexif
 * asks only for the name under which it would look up translations, and gets none. */
#define GETTEXT_PACKAGE "libexif-12"
#define LOCALEDIR ""
