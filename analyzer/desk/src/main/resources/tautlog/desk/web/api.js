// Asks the server. Every answer is JSON or a sentence; a sentence is thrown as it is.
export async function ask(path, parameters = {}, signal = undefined) {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(parameters)) {
    if (value !== undefined && value !== null && value !== "") query.set(key, value);
  }
  const text = query.toString();
  return read(await fetch(path + (text ? "?" + text : ""), { signal, credentials: "same-origin" }));
}

export async function send(path, body) {
  return read(await fetch(path, {
    method: "POST", credentials: "same-origin",
    headers: { "Content-Type": "application/json" }, body: JSON.stringify(body),
  }));
}

async function read(response) {
  if (!response.ok) throw new Error((await response.text()).trim());
  return response.json();
}
