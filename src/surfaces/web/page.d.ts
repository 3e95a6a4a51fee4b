// What the build makes of imports that are no script: a style sheet laid on the page, or its text.
declare module "*.css";
declare module "*.css?raw" {
  const text: string;
  export default text;
}
