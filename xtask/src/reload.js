// Served by `cargo xtask serve` alone: loads the page anew when another version has been built.
const mine = document.documentElement.dataset.version;
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

async function follow() {
  for (;;) {
    try {
      const response = await fetch("./reload-news?" + mine, { cache: "no-store" });
      const version = await response.text();
      if (response.ok && version !== mine) return renew();
    } catch {
      await pause(1000); // the server is gone or starting again
    }
  }
}

// The service worker serves the version that it keeps: it has to step back first.
async function renew() {
  const registration = await navigator.serviceWorker?.getRegistration();
  if (registration?.active) {
    await registration.update();
    const next = registration.installing ?? registration.waiting;
    while (next?.state === "installing") await pause(50);
    next?.postMessage("SKIP_WAITING");
    while (next?.state === "installed" || next?.state === "activating") await pause(50);
  }
  location.reload();
}

follow();
