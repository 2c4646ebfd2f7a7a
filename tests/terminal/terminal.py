"""A terminal of its own for one program: keys in, what it shows out. Needs tmux."""
import os
import pathlib
import re
import shlex
import shutil
import subprocess
import tempfile
import time

PATIENCE = 60  # seconds until something that should come counts as not coming; a slow machine needs a few


def have_tmux():
    return shutil.which("tmux") is not None


def flat(text):
    """Wherever the lines were broken."""
    return re.sub(r"\s+", " ", text)


class Terminal:
    """Runs `command` in `folder` on a dumb terminal; at its end the terminal shows "status N".

    Everything the terminal was sent is kept in a file, so that not only the last screen can be looked at.
    """

    def __init__(self, command, folder, scratch):
        own = pathlib.Path(tempfile.mkdtemp(dir=scratch))  # with a server of its own in it
        self.log = own / "shown"
        self.log.touch()
        self.pid_file = own / "pid"
        self.environment = {**os.environ, "TMUX_TMPDIR": str(own)}
        self.environment.pop("TMUX", None)
        words = " ".join(word if word.startswith("2>") else shlex.quote(word) for word in command)
        # It waits for a key, so that nothing is shown before the terminal's output is kept.
        # An interrupt from the keyboard ends the program, and not the shell that tells how.
        script = (f"read key; trap : INT; sh -c 'echo $$ > \"$0\"; exec \"$@\"' {shlex.quote(str(self.pid_file))} "
                  f"env TERM=dumb {words}; printf '\\nstatus %s\\n' $?; read key")
        self.tmux("-f", "/dev/null", "new-session", "-d", "-x", "80", "-y", "24", "-c", str(folder), script)
        self.tmux("pipe-pane", "-o", f"cat >> {shlex.quote(str(self.log))}")
        self.seen = 0
        self.keys("Enter")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.tmux("kill-server", check=False)

    def tmux(self, *arguments, check=True):
        return subprocess.run(["tmux", *arguments], env=self.environment, check=check, capture_output=True, text=True)

    def keys(self, *names):
        self.tmux("send-keys", *names)

    def type(self, text):
        if text:
            self.tmux("send-keys", "-l", "--", text)

    def shown(self):
        return self.log.read_text(encoding="utf-8", errors="replace").replace("\r", "")

    def until(self, condition, what):
        deadline = time.monotonic() + PATIENCE
        while time.monotonic() < deadline:
            found = condition()
            if found:
                return found
            time.sleep(0.01)
        raise AssertionError(f"{what} did not come; shown:\n{self.shown()[-3000:]}")

    def next_question(self):
        """The text since the last answer, up to the prompt, or up to "status N" at the end."""
        def complete():
            new = self.shown()[self.seen:]
            return new if new.endswith("] > ") or re.search(r"^status \d+$", new, re.M) else None

        text = self.until(complete, "a question")
        self.seen += len(text)
        return text

    def answer(self, text):
        self.type(text)
        self.keys("Enter")

    def answer_each(self, count, text):
        """The same to the next so many questions; the one behind them stands then."""
        for _ in range(count):
            self.next_question()
            self.answer(text)
        self.next_question()

    def converse(self, answers, otherwise):
        """Answers until the program ends: of a list each once, in order. Returns its exit status."""
        left = {part: list(says) if isinstance(says, list) else [says] for part, says in answers.items()}
        while True:
            text = self.next_question()
            if status := re.search(r"^status (\d+)$", text, re.M):
                unasked = [part for part, says in left.items() if says]
                assert not unasked, f"never asked: {unasked}"
                return int(status[1])
            asked = flat(text)
            part = next((part for part, says in left.items() if says and part in asked), None)
            self.answer(left[part].pop(0) if part else otherwise)

    def program(self):
        """The process number of the program."""
        return int(self.until(lambda: self.pid_file.exists() and self.pid_file.read_text().strip(), "the program"))

    def close(self):
        """As when the window is closed, or the line is cut."""
        self.tmux("kill-server", check=False)
