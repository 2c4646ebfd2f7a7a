"""A headless Chromium driven over its debugging pipe: nothing to install but the browser itself."""
import base64
import json
import os
import shutil
import subprocess
import tempfile


def find_browser():
    for name in ("chromium", "chromium-browser", "google-chrome"):
        path = shutil.which(name)
        if path:
            return path
    return None


class Browser:
    def __init__(self, program):
        self.profile = tempfile.mkdtemp(prefix="sheet-browser-")
        to_read, to_write = os.pipe()
        from_read, from_write = os.pipe()

        def wire():  # the browser reads commands on 3 and answers on 4
            os.dup2(to_read, 10)
            os.dup2(from_write, 11)
            os.dup2(10, 3)
            os.dup2(11, 4)

        self.process = subprocess.Popen(
            [program, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--hide-scrollbars",
             "--remote-debugging-pipe", "--user-data-dir=" + self.profile, "about:blank"],
            preexec_fn=wire, close_fds=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_read)
        os.close(from_write)
        self.commands = os.fdopen(to_write, "wb", buffering=0)
        self.answers = os.fdopen(from_read, "rb")
        self.count = 0
        self.session = None
        self.events = []
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.call(domain + ".enable")

    def close(self):
        self.process.terminate()
        self.process.wait()
        self.commands.close()
        self.answers.close()
        shutil.rmtree(self.profile, ignore_errors=True)

    def _message(self):
        data = bytearray()
        while True:
            byte = self.answers.read(1)
            if not byte:
                raise RuntimeError("the browser went away")
            if byte == b"\0":
                return json.loads(data.decode())
            data += byte

    def call(self, method, **params):
        self.count += 1
        number = self.count
        message = {"id": number, "method": method, "params": params}
        if self.session:
            message["sessionId"] = self.session
        self.commands.write(json.dumps(message).encode() + b"\0")
        while True:
            answer = self._message()
            if answer.get("id") == number:
                if "error" in answer:
                    raise RuntimeError(method + ": " + answer["error"]["message"])
                return answer["result"]
            self.events.append(answer)

    def open(self, url, width, height=800):
        self.events.clear()
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)
        self.call("Page.navigate", url=url)
        while not any(event.get("method") == "Page.loadEventFired" for event in self.events):
            self.events.append(self._message())

    def complaints(self):
        """What the page wrote to the console, and whatever it tried to fetch besides itself."""
        found = []
        for event in self.events:
            method, params = event.get("method"), event.get("params", {})
            if method == "Runtime.exceptionThrown" or method == "Runtime.consoleAPICalled":
                found.append(json.dumps(params)[:300])
            elif method == "Log.entryAdded":
                found.append(params["entry"]["text"])
            elif method == "Network.requestWillBeSent":
                url = params["request"]["url"]
                if not url.startswith(("file:", "data:")):
                    found.append("fetches " + url)
        return found

    def evaluate(self, expression):
        result = self.call("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in result:
            raise RuntimeError(json.dumps(result["exceptionDetails"])[:500])
        return result["result"].get("value")

    def media(self, name):
        self.call("Emulation.setEmulatedMedia", media=name)

    def pdf(self, width, height):
        """Printed on paper of so many inches, backgrounds left out as most people's settings leave them."""
        return base64.b64decode(self.call("Page.printToPDF", preferCSSPageSize=True, paperWidth=width, paperHeight=height)["data"])

    def picture(self):
        return base64.b64decode(self.call("Page.captureScreenshot", captureBeyondViewport=True)["data"])
