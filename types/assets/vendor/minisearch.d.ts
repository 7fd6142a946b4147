export * from "minisearch";
export { default } from "minisearch";
