// The way out: takes the service worker and the files it kept off the phone. Knows nothing of the book, and never touches it.
const OURS = `fivebar-files ${new URL("./", location).pathname} `; // as in sw.js

document.getElementById("clear").addEventListener("click", async () => {
  try {
    const worker = await navigator.serviceWorker?.getRegistration("./");
    await worker?.unregister();
    for (const name of await caches.keys()) if (name.startsWith(OURS)) await caches.delete(name);
    say("done");
  } catch {
    say("failed");
  }
});

const look = () => navigator.onLine || say("no-network");
look();
addEventListener("offline", look);

function say(id) {
  document.getElementById("said").replaceChildren(document.getElementById(id).content.cloneNode(true));
}
