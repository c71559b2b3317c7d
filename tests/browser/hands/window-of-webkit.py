#!/usr/bin/python3
"""A bare WebKitGTK window for WebKitWebDriver that keeps its profile: MiniBrowser forgets everything under automation."""
import ctypes
import os
import signal

import gi

gi.require_version('Gtk', '3.0')
gi.require_version('WebKit2', '4.1')
from gi.repository import GLib, Gtk, WebKit2

DIES_WITH_ITS_PARENT = 1
ctypes.CDLL(None).prctl(DIES_WITH_ITS_PARENT, signal.SIGKILL)

profile = os.environ['PROFILE']
kept = WebKit2.WebsiteDataManager(base_data_directory=profile + '/data', base_cache_directory=profile + '/cache')
context = WebKit2.WebContext.new_with_website_data_manager(kept)
context.set_automation_allowed(True)
views = []


def view_for(_session):
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    first = WebKit2.UserScript.new(
        os.environ['FIRST_SCRIPT'], WebKit2.UserContentInjectedFrames.TOP_FRAME, WebKit2.UserScriptInjectionTime.START
    )
    view.get_user_content_manager().add_script(first)
    settings = view.get_settings()
    settings.set_enable_write_console_messages_to_stdout(True)
    settings.set_enable_media_stream(True)
    settings.set_enable_mock_capture_devices(True)  # a camera with a test picture
    view.connect('permission-request', lambda _view, asked: asked.allow() or True)
    window = Gtk.Window(decorated=False)
    window.set_default_size(390, 844)
    window.add(view)
    window.show_all()
    window.get_window().focus(0)  # there is no window manager: without it the page never has the focus
    view.grab_focus()
    view.connect('close', lambda _view: window.destroy())
    views.append(view)
    return view


def started(_context, session):
    info = WebKit2.ApplicationInfo.new()
    info.set_name('MiniBrowser')
    info.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), WebKit2.get_micro_version())
    session.set_application_info(info)
    session.connect('create-web-view', view_for)


def downloading(_context, download):
    def where(one, name):
        one.set_destination('file://' + os.environ['DOWNLOADS'] + '/' + name)
        return True

    download.connect('decide-destination', where)


def print_it():
    """On A4 into a file, when told by a signal: WebDriver here can't print."""
    paper = Gtk.PageSetup()
    paper.set_paper_size(Gtk.PaperSize.new('iso_a4'))
    settings = Gtk.PrintSettings()
    settings.set_printer('Print to File')
    settings.set('output-file-format', 'pdf')
    settings.set('output-uri', 'file://' + os.environ['DOWNLOADS'] + '/printing.pdf')
    printing = WebKit2.PrintOperation.new(views[-1])
    printing.set_page_setup(paper)
    printing.set_print_settings(settings)
    done = os.environ['DOWNLOADS'] + '/printing.pdf', os.environ['DOWNLOADS'] + '/printed.pdf'
    printing.connect('finished', lambda _printing: os.rename(*done))
    printing.print_()
    print_it.last = printing
    return True


GLib.unix_signal_add(GLib.PRIORITY_DEFAULT, signal.SIGUSR1, print_it)
context.connect('automation-started', started)
context.connect('download-started', downloading)
Gtk.main()
