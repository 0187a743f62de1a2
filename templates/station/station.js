// The pages work without this. It marks the page one is on, and keeps a second press from sending a form twice.
"use strict";
for (const link of document.querySelectorAll("nav a"))
  if (link.pathname === location.pathname || (link.pathname !== "/" && location.pathname.startsWith(link.pathname + "/")))
    link.setAttribute("aria-current", "page");
addEventListener("submit", (event) => {
  const form = event.target;
  if (form.dataset.sent) return event.preventDefault();
  if (form.method !== "post") return;
  form.dataset.sent = "yes";
  // A PDF leaves the page as it is: the form can be sent again after a while.
  setTimeout(() => delete form.dataset.sent, 4000);
});
