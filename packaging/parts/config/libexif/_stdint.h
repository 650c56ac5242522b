/* Integers of fixed width for libexif; its own configure would write the same. */
#include <stdint.h>
