"use strict";

// The names of the address become attributes of the element, before it is defined.
const solver = document.getElementById("solver");
for (const [name, value] of new URLSearchParams(location.search)) {
  if (/^[a-z][a-z0-9_]*$/.test(name) && !["id", "level", "service"].includes(name)) solver.setAttribute(name, value);
}
document.documentElement.lang = solver.getAttribute("lang") || "en";
