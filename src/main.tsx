import { startApp } from "./app/startApp.js";

const root = document.getElementById("app");
if (root !== null) void startApp(root);
