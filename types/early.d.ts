/** The thread that a page begins with, see `assets/early/python.js`; nobody asked for it yet. */
declare var earlyPython: Worker | undefined;
