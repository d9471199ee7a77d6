//! The structure of a paper: what is heading, paragraph, table or figure, for readers who do not see the page.

/// Role of a piece of structure (ISO 32000-1, 14.8.4).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// The whole paper.
    Document,
    /// Title.
    H1,
    /// Heading of a section.
    H2,
    /// Heading below it.
    H3,
    /// Paragraph.
    P,
    /// A section.
    Sect,
    /// List.
    L,
    /// Item of a list.
    LI,
    /// Label of an item.
    Lbl,
    /// Body of an item.
    LBody,
    /// Table.
    Table,
    /// Row.
    TR,
    /// Head cell.
    TH,
    /// Cell.
    TD,
    /// Picture.
    Figure,
}

impl Role {
    /// The name in the file.
    pub fn name(self) -> &'static str {
        match self {
            Self::Document => "Document",
            Self::H1 => "H1",
            Self::H2 => "H2",
            Self::H3 => "H3",
            Self::P => "P",
            Self::Sect => "Sect",
            Self::L => "L",
            Self::LI => "LI",
            Self::Lbl => "Lbl",
            Self::LBody => "LBody",
            Self::Table => "Table",
            Self::TR => "TR",
            Self::TH => "TH",
            Self::TD => "TD",
            Self::Figure => "Figure",
        }
    }
}

/// What a piece of structure holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kid {
    /// Another piece, by its place in [`Tags::nodes`].
    Node(usize),
    /// Marked content on a page.
    Content {
        /// Page, from 0.
        page: usize,
        /// Number of the marked content on that page.
        mcid: usize,
    },
}

/// One piece of structure.
#[derive(Debug, Clone)]
pub struct Node {
    /// Its role.
    pub role: Role,
    /// The piece it belongs to; `None` for the document.
    pub parent: Option<usize>,
    /// What it holds, in reading order.
    pub kids: Vec<Kid>,
    /// Words in place of a picture.
    pub alt: String,
    /// Tag of the language it speaks, where that is another than the paper's; else empty.
    pub language: String,
}

impl Node {
    fn new(role: Role, parent: Option<usize>) -> Self {
        Self { role, parent, kids: Vec::new(), alt: String::new(), language: String::new() }
    }
}

/// The tree, with the pieces that are open while the paper is drawn.
#[derive(Debug, Clone)]
pub struct Tags {
    /// All pieces; the first is the document.
    pub nodes: Vec<Node>,
    open: Vec<usize>,
    /// For each page, the piece that owns each marked content.
    pub owners: Vec<Vec<usize>>,
}

impl Tags {
    /// A document with nothing in it.
    pub fn new() -> Self {
        Self { nodes: vec![Node::new(Role::Document, None)], open: vec![0], owners: Vec::new() }
    }

    fn current(&self) -> usize {
        self.open.last().copied().unwrap_or(0)
    }

    /// Opens a piece inside the one that is open, and gives its place.
    pub fn open(&mut self, role: Role) -> usize {
        let parent = self.current();
        let node = self.nodes.len();
        self.nodes.push(Node::new(role, Some(parent)));
        self.nodes[parent].kids.push(Kid::Node(node));
        self.open.push(node);
        node
    }

    /// Opens a piece again that was closed, for what of it stands on the next page.
    pub fn resume(&mut self, node: usize) {
        self.open.push(node);
    }

    /// Closes the piece that is open; the document stays open.
    pub fn close(&mut self) {
        if self.open.len() > 1 {
            self.open.pop();
        }
    }

    /// Says in which language the open piece speaks.
    pub fn speak(&mut self, language: &str) {
        let node = self.current();
        language.clone_into(&mut self.nodes[node].language);
    }

    /// Says in words what the open picture shows.
    pub fn describe(&mut self, alt: &str) {
        let node = self.current();
        alt.clone_into(&mut self.nodes[node].alt);
    }

    /// Takes content on a page into the open piece: its role and its number.
    pub fn content(&mut self, page: usize) -> (Role, usize) {
        while self.owners.len() <= page {
            self.owners.push(Vec::new());
        }
        let node = self.current();
        let mcid = self.owners[page].len();
        self.owners[page].push(node);
        self.nodes[node].kids.push(Kid::Content { page, mcid });
        (self.nodes[node].role, mcid)
    }
}
