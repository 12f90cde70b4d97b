"""Can everybody open the evidence and find each value with its source?"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, expect

from estimator.report import trust
from tests import checked
from tests.browser.axe import findings
from tests.browser.harness import Server, Visit
from tests.browser.windows import visit


def go(here: Visit) -> None:
    """By its address."""
    here.open("/trust")


@pytest.mark.parametrize(("dark", "phone"), [(False, False), (True, True)], ids=["light-desk", "dark-phone"])
def test_every_value_can_be_opened_and_read(browser: Browser, server: Server, dark: bool, phone: bool) -> None:
    results = checked.results()
    with visit(browser, server, dark=dark, phone=phone) as here:
        go(here)
        assert " ".join(here.answer().split()) == trust.answer(results)
        assert trust.NOT_VERIFIED[0] in here.page.locator("p.small").first.inner_text()
        assert here.page.get_by_role("cell", name="yes", exact=True).count() == 0
        groups = trust.groups(results)
        titles = [trust.group_title(name, members) for name, members in groups.items()]
        opened = titles[:2] if phone else titles  # all of them once: each is drawn as it is opened
        for title in (*opened, "Climate by climate, and by how much the heating has to do"):
            fold = here.page.get_by_text(title, exact=True)
            here.after(fold.click)
        shown = [one for members in list(groups.values())[: len(opened)] for one in members]
        expect(here.page.get_by_role("cell", name="yes", exact=True)).to_have_count(len(shown))
        assert here.page.get_by_role("table", name=shown[0].check.title).is_visible()
        assert findings(here.page) == []
        here.assert_quiet()


def test_working_them_out_again_gives_the_same(browser: Browser, server: Server) -> None:
    with visit(browser, server) as here:
        go(here)
        said = here.answer()
        here.after(lambda: here.page.get_by_role("button", name="Work them all out again").click())
        assert here.answer() == said
        here.assert_quiet()
