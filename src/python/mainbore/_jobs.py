"""Jobs, rules and settings as Python has them, made into texts."""
from __future__ import annotations

import json
import os
import pathlib
from typing import Any, Callable, Dict, Iterable, List, Mapping, Sequence, Tuple, Union

Job = Union[str, bytes, Mapping[str, Any]]
Source = Union[str, "os.PathLike[str]", Mapping[str, Any]]
NamedText = Tuple[str, bytes]


def job_bytes(job: Job) -> bytes:
    """A job as JSON in UTF-8."""
    if isinstance(job, bytes):
        return job
    if isinstance(job, str):
        return job.encode("utf-8", "surrogatepass")  # what is not text is for the reader to refuse
    if isinstance(job, (dict, Mapping)):  # the former is told in no time
        return _encoder.encode(job).encode("utf-8", "surrogatepass")
    raise TypeError(f"a job is a mapping or JSON text, not {type(job).__name__}")


def job_line(job: Job) -> bytes:
    """A job as one line. A line break between values is a space; none stands inside a JSON text."""
    line = job_bytes(job).rstrip()
    if b"\n" in line or b"\r" in line:
        line = line.replace(b"\r", b" ").replace(b"\n", b" ")
    return line or b"null"  # an order without text is still an order


def job_lines(jobs: Sequence[Job]) -> bytes:
    """Jobs as lines. Jobs of one kind are made into text together, which takes a third of the time."""
    kinds = set(map(type, jobs))
    try:
        if kinds == {dict}:
            return "\n".join(map(_line_of, jobs)).encode("utf-8", "surrogatepass")
        if kinds == {bytes} or kinds == {str}:
            lines = list(map(bytes.rstrip, jobs if kinds == {bytes} else map(str.encode, jobs)))  # type: ignore[arg-type]
            text = b"\n".join(lines)
            if all(lines) and b"\r" not in text and text.count(b"\n") == len(lines) - 1:
                return text
    except (TypeError, ValueError, RecursionError):
        pass  # one by one, where what is wrong is told
    return b"\n".join(map(job_line, jobs))


def source(given: Source, what: str) -> NamedText:
    """The text of a file, named by its path, or of a mapping."""
    if isinstance(given, Mapping):
        return what, job_bytes(given)
    path = os.fspath(given)
    return path, pathlib.Path(path).read_bytes()


def sources(given: Union[None, Source, Iterable[Source]], what: str) -> List[NamedText]:
    if given is None:
        return []
    if isinstance(given, (str, os.PathLike, Mapping)):
        return [source(given, what)]
    return [source(one, f"{what} {number}") for number, one in enumerate(given, 1)]


def folder(path: Union[str, "os.PathLike[str]"]) -> List[NamedText]:
    """Every table of a folder, named by its place there."""
    top = pathlib.Path(path)
    files = sorted(top.rglob("*.json"))
    if not files:  # never those built in, unless they are meant
        raise FileNotFoundError(f"{path} has no tables")
    return [(file.relative_to(top).as_posix(), file.read_bytes()) for file in files]


def nested(flat: Mapping[str, Any]) -> Dict[str, Any]:
    """A job out of paths: {"main.size": "8 in"} is {"main": {"size": "8 in"}}. None, NaN and empty text are facts left out.

    A row of a data frame whose columns are paths becomes a job so.
    """
    job: Dict[str, Any] = {}
    for path, value in flat.items():
        if value is None or value == "" or value != value:
            continue
        *parents, last = str(path).split(".")
        place = job
        for parent in parents:
            place = place.setdefault(parent, {})
            if not isinstance(place, dict):
                raise ValueError(f"{path}: {parent} is given as a value too")
        place[last] = value
    return job


def _plain(value: Any) -> Any:
    """Numbers and lists of numerical packages."""
    if hasattr(value, "tolist"):
        return value.tolist()
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(f"{type(value).__name__} is not JSON")


_encoder = json.JSONEncoder(ensure_ascii=False, allow_nan=False, default=_plain)  # json.dumps makes one for each call


def _maker_of_lines() -> Callable[[Any], str]:
    """What _encoder.encode does. Where Python has its encoder in C, that is made once, not for each job."""
    make = getattr(json.encoder, "c_make_encoder", None)
    try:
        encode = make(None, _plain, json.encoder.encode_basestring, None, ": ", ", ", False, False, False)  # type: ignore
        if "".join(encode({"size": ["1 in", 2, None]}, 0)) == '{"size": ["1 in", 2, null]}':
            return lambda job: "".join(encode(job, 0))
    except TypeError:
        pass
    return _encoder.encode


_line_of = _maker_of_lines()
