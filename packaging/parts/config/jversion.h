/* What libjpeg-turbo says of itself. */
#define JVERSION "6b  27-Mar-1998"
#define JCOPYRIGHT "Copyright (C) 1991-2023 The libjpeg-turbo Project and many others"
#define JCOPYRIGHT_SHORT JCOPYRIGHT
