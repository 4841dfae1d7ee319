/****************************************************************************
** Meta object code from reading C++ file 'openjob.h'
**
** Created by: The Qt Meta Object Compiler version 68 (Qt 6.4.2)
**
** WARNING! All changes made in this file will be lost!
*****************************************************************************/

#include <memory>
#include "../../../ui/openjob/openjob.h"
#include <QtCore/qmetatype.h>
#if !defined(Q_MOC_OUTPUT_REVISION)
#error "The header file 'openjob.h' doesn't include <QObject>."
#elif Q_MOC_OUTPUT_REVISION != 68
#error "This file was generated using the moc from 6.4.2. It"
#error "cannot be used with the include files from this version of Qt."
#error "(The moc has changed too much.)"
#endif

#ifndef Q_CONSTINIT
#define Q_CONSTINIT
#endif

QT_BEGIN_MOC_NAMESPACE
QT_WARNING_PUSH
QT_WARNING_DISABLE_DEPRECATED
namespace {
struct qt_meta_stringdata_doorloom__OpenJob_t {
    uint offsetsAndSizes[24];
    char stringdata0[18];
    char stringdata1[11];
    char stringdata2[1];
    char stringdata3[18];
    char stringdata4[8];
    char stringdata5[12];
    char stringdata6[14];
    char stringdata7[14];
    char stringdata8[14];
    char stringdata9[14];
    char stringdata10[18];
    char stringdata11[8];
};
#define QT_MOC_LITERAL(ofs, len) \
    uint(sizeof(qt_meta_stringdata_doorloom__OpenJob_t::offsetsAndSizes) + ofs), len 
Q_CONSTINIT static const qt_meta_stringdata_doorloom__OpenJob_t qt_meta_stringdata_doorloom__OpenJob = {
    {
        QT_MOC_LITERAL(0, 17),  // "doorloom::OpenJob"
        QT_MOC_LITERAL(18, 10),  // "jobChanged"
        QT_MOC_LITERAL(29, 0),  // ""
        QT_MOC_LITERAL(30, 17),  // "doorloom::Touched"
        QT_MOC_LITERAL(48, 7),  // "touched"
        QT_MOC_LITERAL(56, 11),  // "fileChanged"
        QT_MOC_LITERAL(68, 13),  // "judgedChanged"
        QT_MOC_LITERAL(82, 13),  // "changedOnDisk"
        QT_MOC_LITERAL(96, 13),  // "openElsewhere"
        QT_MOC_LITERAL(110, 13),  // "journalFailed"
        QT_MOC_LITERAL(124, 17),  // "doorloom::Problem"
        QT_MOC_LITERAL(142, 7)   // "problem"
    },
    "doorloom::OpenJob",
    "jobChanged",
    "",
    "doorloom::Touched",
    "touched",
    "fileChanged",
    "judgedChanged",
    "changedOnDisk",
    "openElsewhere",
    "journalFailed",
    "doorloom::Problem",
    "problem"
};
#undef QT_MOC_LITERAL
} // unnamed namespace

Q_CONSTINIT static const uint qt_meta_data_doorloom__OpenJob[] = {

 // content:
      10,       // revision
       0,       // classname
       0,    0, // classinfo
       6,   14, // methods
       0,    0, // properties
       0,    0, // enums/sets
       0,    0, // constructors
       0,       // flags
       6,       // signalCount

 // signals: name, argc, parameters, tag, flags, initial metatype offsets
       1,    1,   50,    2, 0x06,    1 /* Public */,
       5,    0,   53,    2, 0x06,    3 /* Public */,
       6,    0,   54,    2, 0x06,    4 /* Public */,
       7,    0,   55,    2, 0x06,    5 /* Public */,
       8,    0,   56,    2, 0x06,    6 /* Public */,
       9,    1,   57,    2, 0x06,    7 /* Public */,

 // signals: parameters
    QMetaType::Void, 0x80000000 | 3,    4,
    QMetaType::Void,
    QMetaType::Void,
    QMetaType::Void,
    QMetaType::Void,
    QMetaType::Void, 0x80000000 | 10,   11,

       0        // eod
};

Q_CONSTINIT const QMetaObject doorloom::OpenJob::staticMetaObject = { {
    QMetaObject::SuperData::link<QObject::staticMetaObject>(),
    qt_meta_stringdata_doorloom__OpenJob.offsetsAndSizes,
    qt_meta_data_doorloom__OpenJob,
    qt_static_metacall,
    nullptr,
    qt_incomplete_metaTypeArray<qt_meta_stringdata_doorloom__OpenJob_t,
        // Q_OBJECT / Q_GADGET
        QtPrivate::TypeAndForceComplete<OpenJob, std::true_type>,
        // method 'jobChanged'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        QtPrivate::TypeAndForceComplete<const doorloom::Touched &, std::false_type>,
        // method 'fileChanged'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        // method 'judgedChanged'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        // method 'changedOnDisk'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        // method 'openElsewhere'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        // method 'journalFailed'
        QtPrivate::TypeAndForceComplete<void, std::false_type>,
        QtPrivate::TypeAndForceComplete<const doorloom::Problem &, std::false_type>
    >,
    nullptr
} };

void doorloom::OpenJob::qt_static_metacall(QObject *_o, QMetaObject::Call _c, int _id, void **_a)
{
    if (_c == QMetaObject::InvokeMetaMethod) {
        auto *_t = static_cast<OpenJob *>(_o);
        (void)_t;
        switch (_id) {
        case 0: _t->jobChanged((*reinterpret_cast< std::add_pointer_t<doorloom::Touched>>(_a[1]))); break;
        case 1: _t->fileChanged(); break;
        case 2: _t->judgedChanged(); break;
        case 3: _t->changedOnDisk(); break;
        case 4: _t->openElsewhere(); break;
        case 5: _t->journalFailed((*reinterpret_cast< std::add_pointer_t<doorloom::Problem>>(_a[1]))); break;
        default: ;
        }
    } else if (_c == QMetaObject::IndexOfMethod) {
        int *result = reinterpret_cast<int *>(_a[0]);
        {
            using _t = void (OpenJob::*)(const doorloom::Touched & );
            if (_t _q_method = &OpenJob::jobChanged; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 0;
                return;
            }
        }
        {
            using _t = void (OpenJob::*)();
            if (_t _q_method = &OpenJob::fileChanged; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 1;
                return;
            }
        }
        {
            using _t = void (OpenJob::*)();
            if (_t _q_method = &OpenJob::judgedChanged; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 2;
                return;
            }
        }
        {
            using _t = void (OpenJob::*)();
            if (_t _q_method = &OpenJob::changedOnDisk; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 3;
                return;
            }
        }
        {
            using _t = void (OpenJob::*)();
            if (_t _q_method = &OpenJob::openElsewhere; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 4;
                return;
            }
        }
        {
            using _t = void (OpenJob::*)(const doorloom::Problem & );
            if (_t _q_method = &OpenJob::journalFailed; *reinterpret_cast<_t *>(_a[1]) == _q_method) {
                *result = 5;
                return;
            }
        }
    }
}

const QMetaObject *doorloom::OpenJob::metaObject() const
{
    return QObject::d_ptr->metaObject ? QObject::d_ptr->dynamicMetaObject() : &staticMetaObject;
}

void *doorloom::OpenJob::qt_metacast(const char *_clname)
{
    if (!_clname) return nullptr;
    if (!strcmp(_clname, qt_meta_stringdata_doorloom__OpenJob.stringdata0))
        return static_cast<void*>(this);
    return QObject::qt_metacast(_clname);
}

int doorloom::OpenJob::qt_metacall(QMetaObject::Call _c, int _id, void **_a)
{
    _id = QObject::qt_metacall(_c, _id, _a);
    if (_id < 0)
        return _id;
    if (_c == QMetaObject::InvokeMetaMethod) {
        if (_id < 6)
            qt_static_metacall(this, _c, _id, _a);
        _id -= 6;
    } else if (_c == QMetaObject::RegisterMethodArgumentMetaType) {
        if (_id < 6)
            *reinterpret_cast<QMetaType *>(_a[0]) = QMetaType();
        _id -= 6;
    }
    return _id;
}

// SIGNAL 0
void doorloom::OpenJob::jobChanged(const doorloom::Touched & _t1)
{
    void *_a[] = { nullptr, const_cast<void*>(reinterpret_cast<const void*>(std::addressof(_t1))) };
    QMetaObject::activate(this, &staticMetaObject, 0, _a);
}

// SIGNAL 1
void doorloom::OpenJob::fileChanged()
{
    QMetaObject::activate(this, &staticMetaObject, 1, nullptr);
}

// SIGNAL 2
void doorloom::OpenJob::judgedChanged()
{
    QMetaObject::activate(this, &staticMetaObject, 2, nullptr);
}

// SIGNAL 3
void doorloom::OpenJob::changedOnDisk()
{
    QMetaObject::activate(this, &staticMetaObject, 3, nullptr);
}

// SIGNAL 4
void doorloom::OpenJob::openElsewhere()
{
    QMetaObject::activate(this, &staticMetaObject, 4, nullptr);
}

// SIGNAL 5
void doorloom::OpenJob::journalFailed(const doorloom::Problem & _t1)
{
    void *_a[] = { nullptr, const_cast<void*>(reinterpret_cast<const void*>(std::addressof(_t1))) };
    QMetaObject::activate(this, &staticMetaObject, 5, _a);
}
QT_WARNING_POP
QT_END_MOC_NAMESPACE
