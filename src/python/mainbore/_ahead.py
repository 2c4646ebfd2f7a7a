"""Calls of the library in threads, while the caller's thread makes the next text and uses what came."""
from __future__ import annotations

import collections
import threading
from typing import Callable, Deque, Iterator, Optional, TYPE_CHECKING

if TYPE_CHECKING:
    from concurrent.futures import Future, ThreadPoolExecutor

Call = Callable[[], bytes]


def in_turn(calls: Iterator[Call], threads: int) -> Iterator[bytes]:
    """What the calls return, in their order; what is raised, be it by making a call, comes in its place too.

    As many as there are threads run at once, and no more are made before what the first of them returned is taken.
    """
    from concurrent.futures import ThreadPoolExecutor  # takes a while, which small batches spare

    running: Deque[Future[bytes]] = collections.deque()
    fault: Optional[Exception] = None
    with ThreadPoolExecutor(threads) as pool:
        while True:
            try:
                call = next(calls, None)
            except Exception as raised:
                fault = raised
                break
            if call is None:
                break
            done = running.popleft().result() if len(running) == threads else None
            running.append(_started(pool, call))
            if done is not None:
                yield done
        while running:
            yield running.popleft().result()
    if fault is not None:
        raise fault


def _started(pool: ThreadPoolExecutor, call: Call) -> Future[bytes]:
    # Only this wait lets the other thread begin: a thread of Python that goes on keeps the others waiting for 5 ms.
    begins = threading.Lock()
    begins.acquire()

    def run() -> bytes:
        begins.release()
        return call()

    future = pool.submit(run)
    begins.acquire()
    return future
