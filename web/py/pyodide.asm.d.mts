/** Makes the runtime's module; worker.js wraps it. */
declare const makeModule: (settings: any) => Promise<any>;
export default makeModule;
