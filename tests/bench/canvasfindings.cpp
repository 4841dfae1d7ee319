#include "bench/canvasfindings.h"

#include "bench/largejob.h"
#include "bench/measure.h"

#include "check/check.h"
#include "openjob/openjob.h"
#include "openjob/selection.h"
#include "panels/findingspanel.h"

#include <QCoreApplication>
#include <QEventLoop>
#include <QListView>
#include <QTest>

#include <cstdio>
#include <cstdlib>

namespace doorloom::bench {
namespace {

constexpr std::size_t howMany = 10'000;

Judged manyFindings(const Job& job)
{
    Judged judged;
    while (judged.check.findings.size() < howMany)
        for (const Device& device : job.devices) {
            Finding finding;
            finding.rule = allChecks()[judged.check.findings.size() % allChecks().size()]->code;
            finding.severity = Severity::Fault;
            finding.at = {{device.id, {}, {}, {}}};
            judged.check.findings.push_back(std::move(finding));
        }
    return judged;
}

void rename(OpenJob& open, int count)
{
    JobInfo info;
    info.id = open.job().info.empty() ? JobInfoId{open.job().nextNumber} : open.job().info.begin()->id;
    info.title = std::to_string(count);
    static_cast<void>(open.make({}, {{Put<JobInfo>{info.id, info}}}));
}

} // namespace

std::vector<double> findingsFillTimes(int samples)
{
    const Job job = largeJob();
    OpenJob open(nullptr, [judged = manyFindings(job)](const Job&, const IsWanted&) { return judged; });
    Selection selection;
    FindingsPanel panel(open, selection);
    panel.resize(340, 500);
    panel.show();
    static_cast<void>(QTest::qWaitForWindowExposed(&panel));
    open.begin(job);
    const auto* list = panel.findChild<QListView*>();
    const auto filled = [&] {
        while (!open.judged())
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        QCoreApplication::processEvents();
        panel.repaint();
    };
    filled();
    panel.goTo(1);
    std::vector<double> times;
    for (int i = 0; i < samples; ++i) {
        const double start = threadMilliseconds();
        rename(open, i);
        filled();
        times.push_back(threadMilliseconds() - start);
    }
    if (list->model()->rowCount() < static_cast<int>(howMany)) {
        std::fputs("The findings are not listed: nothing was measured.\n", stderr);
        std::exit(2);
    }
    return times;
}

} // namespace doorloom::bench
