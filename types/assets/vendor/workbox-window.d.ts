export * from "workbox-window";
