//! Opening the book, and letting go of it when the platform or a newer version wants it.
use super::{Store, Trouble, shelf};
use crate::phone::ears::{Ear, first_of};
use crate::phone::window;
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{Event, IdbDatabase, IdbFactory, IdbObjectStoreParameters, IdbOpenDbRequest, IdbRequest, IdbTransaction};

pub(super) const VERSION: u32 = 1;

#[wasm_bindgen]
extern "C" {
    // web-sys has transaction options only behind `web_sys_unstable_apis`; these are the same calls, typed here.
    type Strict;
    #[wasm_bindgen(method, catch)]
    fn transaction(this: &Strict, stores: &JsValue, mode: &str, options: &Object) -> Result<IdbTransaction, JsValue>;
    #[wasm_bindgen(method, getter)]
    fn durability(this: &Strict) -> Option<String>;
}

/// What the store tells of its own accord.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum News {
    /// Another tab holds an older book open; opening goes on when it lets go.
    Waiting,
    /// A newer version wants the book, or it is being removed; this page has let go of it.
    LetGo,
    /// The browser closed the book; the next use opens it again.
    Closed,
}

/// An open book, and what listens to it.
pub(super) struct Open {
    pub db: IdbDatabase,
    _ears: [Ear; 2],
}

/// The platform's store.
pub(super) fn factory() -> Result<IdbFactory, Trouble> {
    window().ok_or(Trouble::NoStore)?.indexed_db().ok().flatten().ok_or(Trouble::NoStore)
}

impl Store {
    /// A transaction over all shelves; a book that was closed under us is opened again, once.
    pub(super) async fn begin(&self, mode: &str) -> Result<IdbTransaction, Trouble> {
        let db = self.database().await?;
        match begin(&db, mode) {
            Ok(work) => Ok(self.noted(work)),
            Err(_) => {
                self.open.take();
                Ok(self.noted(begin(&self.database().await?, mode)?))
            }
        }
    }

    fn noted(&self, work: IdbTransaction) -> IdbTransaction {
        *self.durability.borrow_mut() = work.unchecked_ref::<Strict>().durability();
        work
    }

    pub(super) async fn database(&self) -> Result<IdbDatabase, Trouble> {
        if let Some(open) = &*self.open.borrow() {
            return Ok(open.db.clone());
        }
        let asked = self.asked.take();
        let request = asked.map_or_else(|| Ok::<_, Trouble>(factory()?.open_with_u32(&self.name, VERSION)?), Ok)?;
        let _upgrade = Ear::new(&request, "upgradeneeded", upgrade);
        let tell = self.tell.clone();
        let _waiting = Ear::new(&request, "blocked", move |_| tell(News::Waiting));
        let db: IdbDatabase = answer(&request).await?.unchecked_into();
        Ok(self.keep(db))
    }

    /// Opens the book only if it was made before: an upgrade from nothing is called off, and nothing is left of it.
    pub(super) async fn look(&self) -> bool {
        let Some(request) = factory().ok().and_then(|factory| factory.open_with_u32(&self.name, VERSION).ok()) else { return false };
        let _new = Ear::new(&request, "upgradeneeded", |event: Event| {
            let work = event.target().and_then(|t| t.unchecked_into::<IdbOpenDbRequest>().transaction());
            let _ = work.map(|work| work.abort());
        });
        match answer(&request).await {
            Ok(db) => {
                db.unchecked_into::<IdbDatabase>().close();
                true
            }
            Err(_) => false,
        }
    }

    /// Keeps `db`, unless another use opened the book meanwhile.
    fn keep(&self, db: IdbDatabase) -> IdbDatabase {
        if let Some(open) = &*self.open.borrow() {
            db.close();
            return open.db.clone();
        }
        let ears = [self.let_go_on(&db, "versionchange", News::LetGo), self.let_go_on(&db, "close", News::Closed)];
        *self.open.borrow_mut() = Some(Open { db: db.clone(), _ears: ears });
        db
    }

    fn let_go_on(&self, db: &IdbDatabase, kind: &'static str, news: News) -> Ear {
        let (open, tell, held) = (self.open.clone(), self.tell.clone(), db.clone());
        Ear::new(db, kind, move |_| {
            held.close();
            let gone = open.take(); // dropped after the news: this closure is part of it
            tell(news);
            drop(gone);
        })
    }
}

fn begin(db: &IdbDatabase, mode: &str) -> Result<IdbTransaction, JsValue> {
    begin_on(db, &shelf::all(), mode)
}

/// A transaction over these shelves, with strict durability.
pub(super) fn begin_on(db: &IdbDatabase, shelves: &Array, mode: &str) -> Result<IdbTransaction, JsValue> {
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    db.unchecked_ref::<Strict>().transaction(shelves, mode, &options)
}

fn upgrade(event: Event) {
    let Some(db) = event.target().and_then(|t| t.unchecked_into::<IdbOpenDbRequest>().result().ok()) else { return };
    let db: IdbDatabase = db.unchecked_into();
    let shelf = |name, key: Option<&str>, counts| {
        let options = IdbObjectStoreParameters::new();
        options.set_auto_increment(counts);
        if let Some(key) = key {
            options.set_key_path(&key.into());
        }
        db.create_object_store_with_optional_parameters(name, &options)
    };
    let made = shelf(shelf::ENTRIES, Some("seq"), true).and_then(|entries| {
        let once = web_sys::IdbIndexParameters::new();
        once.set_unique(true);
        entries.create_index_with_str_and_optional_parameters(shelf::BY_ID, "id", &once)?;
        shelf(shelf::META, Some("key"), false)?;
        shelf(shelf::PEOPLE, Some("id"), false)?;
        shelf(shelf::ASIDE, Some("seq"), true)
    });
    if made.is_err()
        && let Some(work) = event.target().and_then(|t| t.unchecked_into::<IdbOpenDbRequest>().transaction())
    {
        let _ = work.abort(); // a book with half its shelves must not open
    }
}

/// The result of a request, or why there is none.
pub(super) fn answer(request: &IdbRequest) -> impl Future<Output = Result<JsValue, Trouble>> + use<> {
    let (request, heard) = (request.clone(), first_of(request, &["success", "error"]));
    async move {
        match heard.await.type_().as_str() {
            "success" => Ok(request.result()?),
            _ => Err(request.error()?.map_or(Trouble::Aborted, |e| JsValue::from(e).into())),
        }
    }
}
