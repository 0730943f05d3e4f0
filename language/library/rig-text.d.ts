/** A `.rig` file imported from the built-in library is its text; the bundler and the test runner load it so. */
declare module '*.rig' {
  const text: string;
  export default text;
}
